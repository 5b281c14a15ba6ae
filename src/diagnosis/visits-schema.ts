import * as z from 'zod/mini';

/**
 * What technicians keep of their visits and exchange as JSON: what was answered, what
 * it turned out to be, which parts were used, how long it took. Names that the guide and its
 * figures declare; no date, no place. Only a technician's remark is free text: the page says to
 * name nobody in it, and nothing is learned from it.
 * Written with zod's small form: the preview page reads such files too.
 */
const id = z.string().check(z.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/));

/** A working day. */
export const MOST_MINUTES = 600;
/** Most characters of a remark. */
export const MOST_REMARK = 300;

/** One visit, in a file and on a device. */
export const visitSchema = z.strictObject({
  id: z
    .optional(z.string().check(z.regex(/^[0-9a-f]{32}$/)))
    .check(z.describe('Drawn by chance when the visit was kept, so that it is counted once')),
  answers: z
    .record(
      z
        .string()
        .check(z.regex(/^((detail|check)\.|[a-z0-9]+(-[a-z0-9]+)*\/)?[a-z0-9]+(-[a-z0-9]+)*$/)),
      id,
    )
    .check(
      z.describe(
        'Key of a question (`other-guide/` before one of another guide), `detail.` and a detail or `check.` and a check → answer',
      ),
    ),
  fault: id.check(
    z.describe(
      'What it turned out to be; `other` when none of the listed faults, `nothing-found` when nothing was wrong',
    ),
  ),
  parts: z.array(id).check(
    // As many as a guide may have, each once.
    z.maxLength(16),
    z.refine((parts) => new Set(parts).size === parts.length),
    z.describe('The parts that were used, each once'),
  ),
  minutes: z.optional(
    z
      .int()
      .check(
        z.minimum(1),
        z.maximum(MOST_MINUTES),
        z.describe('Time taken to find it; since version 2'),
      ),
  ),
  remark: z.optional(
    z
      .string()
      .check(
        z.regex(/^[^\p{Cc}\u2028\u2029]+$/u),
        z.maxLength(MOST_REMARK),
        z.describe('In the technician’s words, one line, naming nobody; since version 2'),
      ),
  ),
});

export const FORMAT = 'hobnote-visits';
/** Written; older ones are read. */
export const VERSION = 2;
export const visitsFile = z.strictObject({
  format: z.literal(FORMAT),
  version: z.union([z.literal(1), z.literal(VERSION)]),
  guide: id,
  visits: z.array(visitSchema),
});

export type RecordedVisit = z.infer<typeof visitSchema>;
export type VisitsFile = z.infer<typeof visitsFile>;

/** The `fault` of a visit that found something the figures do not list. */
export const OTHER = 'other';
/** The `fault` of a visit that found nothing wrong. */
export const NOTHING = 'nothing-found';
/** Visits with these tell of what the figures do not list. */
export const UNLISTED: readonly string[] = [OTHER, NOTHING];
