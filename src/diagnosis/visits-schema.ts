import { z } from 'zod';

/**
 * What technicians keep of their visits and exchange as JSON: what was answered, what
 * it turned out to be, which parts were used. Only names that the guide and its
 * figures declare; no free text, no date, no place, so nothing personal fits in.
 */
const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/);

const visit = z.strictObject({
  answers: z
    .record(z.string().regex(/^((detail|check)\.)?[a-z0-9]+(-[a-z0-9]+)*$/), id)
    .describe('Key of a question, `detail.` and a detail or `check.` and a check → answer'),
  fault: id.describe('What it turned out to be; `other` when none of the listed faults'),
  parts: z.array(id).describe('The parts that were used'),
});

export const visitsFile = z.strictObject({
  format: z.literal('hobnote-visits'),
  version: z.literal(1),
  guide: id,
  visits: z.array(visit),
});

export type Visit = z.infer<typeof visit>;
export type VisitsFile = z.infer<typeof visitsFile>;

/** The `fault` of a visit that found something the figures do not list. */
export const OTHER = 'other';
