import { z } from 'zod';
import { benches, fits, readings } from './types.ts';

/**
 * The authors' form of the evidence model: the files of `content/model`, joined. Shape only;
 * what one part says about another is checked by `cross-check.ts`. Build and command line
 * only: no page loads this.
 */
const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/);
const because = z.string().trim().min(1);
/** Open interval: a 0 or 1 could never be moved by any evidence (Cromwell's rule). */
const probability = z.number().gt(0).lt(1);
/** A working day: longer is a slip of the pen. */
const minutes = z.number().positive().max(480);

const row = z.strictObject({
  faults: z.array(id).min(1),
  p: z.array(probability).min(2),
  because,
});

const fault = z.strictObject({
  /** Share of all calls about a range. */
  prior: probability,
  /** Guide → share of this fault's calls that come as its complaint. Left out: the mixture of all. */
  calls: z.record(id, z.number().positive()).optional(),
  parts: z.array(id),
  /** Cures itself: half are over after so many hours. */
  passes: z.number().positive().optional(),
  because,
});

const fact = z.strictObject({
  values: z.array(id).min(2),
  default: row.omit({ faults: true }),
  rows: z.array(row),
});

/** Guides' pages keep their names where only one guide has it, else the guide comes before it. */
const key = z.string().regex(/^[a-z0-9-]+([./][a-z0-9-]+)?$/);

/** A row for some faults, or for all, where all that it names holds. The first that fits speaks. */
const ruled = row.extend({
  faults: z.array(id).min(1).optional(),
  /** Values of the fact that the table is about. */
  is: z.array(id).min(1).optional(),
  /** Hidden facts and the values of which one holds. */
  if: z.record(id, z.array(id).min(1)).optional(),
  /** Other answers, of which one was given. */
  given: z.record(key, z.array(id).min(1)).optional(),
});

const table = z.strictObject({
  answers: z.array(id).min(2),
  /** The fact that the answers tell of: all answers about one fact count it once. */
  about: id.optional(),
  /** Answer → the keys that it puts out of date. */
  supersedes: z.record(id, z.array(key).min(1)).optional(),
  /** Page → the answers of it that have told this already. */
  told: z.record(key, z.array(id).min(1)).optional(),
  /** Of a detail: page → answer of it → the detail's answer that it is. */
  tells: z.record(key, z.record(id, id)).optional(),
  default: row.omit({ faults: true }),
  rows: z.array(ruled),
});

const check = z.strictObject({
  minutes,
  access: z.array(id),
  reading: z.enum(readings),
  bench: z.enum(benches).optional(),
  'proved-dead': z.boolean(),
  'wires-off': z.boolean(),
  tools: z.array(id),
  skills: z.array(id),
  cautions: z.array(id),
  condemns: id.optional(),
  after: z.array(id).optional(),
  /** Result → the faults it rules in; exactly one result rules in none. */
  results: z.record(id, z.array(id)),
  /** P(a result that rules the fault in | a fault the check can find). */
  catches: probability,
  /** P(a bad result | a fault the check cannot find), all bad results together. */
  'false-alarms': probability,
  because,
  /** Where a fault's results do not follow from the two figures above. */
  rows: z.array(row).optional(),
});

export const modelFile = z.strictObject({
  source: z.literal('assumption-common-practice'),
  faults: z.record(id, fault),
  /** Where in the range → the faults that sit there, each in one place at most. */
  places: z.record(id, z.array(id).min(1)).default({}),
  facts: z.record(id, fact),
  observations: z.record(key, table),
  access: z.record(
    id,
    z.strictObject({
      minutes,
      /** Kind of range → minutes there. */
      kinds: z.record(id, minutes).optional(),
      /** Kind of range → the access that serves there. */
      instead: z.record(id, id).optional(),
      when: z.literal('locked').optional(),
      after: z.array(id).optional(),
      cautions: z.array(id).optional(),
    }),
  ),
  /** In the usual order of the trade, to compare a plan with. */
  checks: z.record(id, check),
  parts: z.record(
    id,
    z
      .strictObject({
        /** What the firm pays for one. */
        price: z.number().positive(),
        fits: z.enum(fits),
        covers: z.array(id).optional(),
      })
      // The route's common stock keeps no account of what comes with what.
      .refine(({ fits, covers }) => !covers || fits === 'model', { path: ['covers'] }),
  ),
});

export type ModelFile = z.infer<typeof modelFile>;
export type CheckFile = z.infer<typeof check>;
export type FactFile = z.infer<typeof fact>;
export type TableFile = z.infer<typeof table>;
export type RowFile = z.infer<typeof ruled>;
