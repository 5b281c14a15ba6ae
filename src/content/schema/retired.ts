import { z } from 'zod';
import { pageMarksSchema } from '../../note/release-schema.ts';
import type { Retired } from '../../note/retired.ts';

/** `content/retired.json`: what releases 1 to 4 did not freeze of their guides. */
export const retiredSchema: z.ZodType<Retired> = z.record(
  z.string(),
  z.strictObject({
    tracks: z.array(z.string()).min(1),
    pages: z.record(z.string(), pageMarksSchema),
  }),
);
