import { z } from 'zod';

/** `content/reviews.yaml`: who has read which version of a guide. */
export const reviewsSchema = z.array(
  z.strictObject({
    guide: z.string(),
    /** The guide's version as the map prints it (`reviews.ts`). */
    hash: z.string().regex(/^[0-9a-f]{12}$/),
    reviewer: z.string().trim().min(1),
    role: z.string().trim().min(1),
    date: z.iso.date(),
  }),
);

export type Review = z.output<typeof reviewsSchema>[number];
