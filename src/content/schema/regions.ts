import { z } from 'zod';

const said = z.string().trim().min(1);

function readable(pattern: string): boolean {
  try {
    return new RegExp(pattern, 'u').flags !== '';
  } catch {
    return false;
  }
}

const regionSchema = z.strictObject({
  /** The emergency numbers that work there, the usual one first. */
  emergency: z.array(z.string().regex(/^\d{2,6}$/)).min(1),
  /** The unit that ovens there show. */
  temperature: z.enum(['F', 'C']),
  /** A phrase of the English sentences → what this region says instead. */
  say: z.record(said, said).default({}),
  /** Patterns that no sentence may match there. */
  never: z.array(z.string().refine(readable, 'no regular expression')).default([]),
  /** A published source's short name → how it is cited there, `same`, or `practice`. */
  sources: z.record(z.string(), said).default({}),
});

/** The region the sentences are written for. */
export const HOME = 'US';

/** `content/regions.yaml`: what changes from one region to the next, by ISO 3166-1 code. */
export const regionsSchema = z
  .record(z.string().regex(/^[A-Z]{2}$/), regionSchema)
  .refine((regions) => Object.hasOwn(regions, HOME), { path: [HOME], message: 'is missing' });

export type Region = z.output<typeof regionSchema>;
