import { z } from 'zod';
import { signals } from '../../guide/types.ts';

/** What a sentence with no published source names as its source. */
export const PRACTICE = 'practice';

const name = z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/);

/** `content/sources.json`: a source's short name → how it is cited. */
export const sourcesSchema = z.record(name, z.string().trim().min(1));

/** `content/care.yaml`: the care pages in the order shown. */
export const carePagesSchema = z
  .array(
    z.strictObject({
      id: name,
      drawing: name,
      /** The signal word over what not to do. */
      care: z.enum(signals),
      /** Guide pages that lead here: `guide/page`, `*` for every guide. */
      from: z.array(z.string().regex(/^(?:\*|[a-z0-9-]+)\/[a-z0-9-]+$/)),
    }),
  )
  .min(1);

export type CarePage = z.output<typeof carePagesSchema>[number];

const claims = z
  .array(
    z.strictObject({
      text: z.string().trim().min(1),
      from: name.describe('A name in content/sources.json, or "practice".'),
    }),
  )
  .min(1);

/** The sentences of one care page in `care.json`. */
export const careTextSchema = z.strictObject({
  title: z.string().trim().min(1),
  lead: z.string().trim().min(1),
  do: claims,
  never: claims,
  why: claims,
});

export type CareText = z.output<typeof careTextSchema>;
export const careParts = ['do', 'never', 'why'] as const;
