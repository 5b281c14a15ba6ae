import { z } from 'zod';

/** A page of a guide, all of a guide, or all guides. */
export const recalledPage = z.string().regex(/^\/(?:[a-z0-9-]+\/){0,2}$/);

/** `content/recall.json`: what copies kept on devices must not show any more. */
export const recallSchema = z.strictObject({
  /** The least release whose pages may still be shown. */
  least: z.int().min(1),
  /** Corrections, the newest last, in a list that only grows: copies count them. */
  pages: z.array(recalledPage),
});

export type RecallFile = z.infer<typeof recallSchema>;
