import { z } from 'zod';

const language = z.strictObject({
  /** In the language itself. */
  name: z.string().trim().min(1),
  /** Whose way of writing the language the sentences keep to (ISO 3166-1): without it the firm's. */
  region: z
    .string()
    .regex(/^[A-Z]{2}$/)
    .optional(),
  direction: z.enum(['ltr', 'rtl']),
  /** Whether the staff's pages speak it too. */
  staff: z.boolean(),
  /** Texts that may stand as they are in English: names and words both languages share. */
  same: z.array(z.string()).default([]),
});

/** `content/languages.yaml`: what there is to know of a language besides its sentences. */
export const languagesSchema = z.record(z.string().regex(/^[a-z]{2}$/), language);

export type Language = z.output<typeof language>;
