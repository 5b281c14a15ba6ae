import { z } from 'zod';
import { benches, readings } from './types.ts';

/**
 * The authors' form of a diagnosis model: `faults.yaml`. Shape only; what one
 * part says about another is checked by `cross-check.ts`. Build and command
 * line only: no page loads this.
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

const fault = z.strictObject({ prior: probability, parts: z.array(id), because });

const table = z.strictObject({
  answers: z.array(id).min(2),
  default: row.omit({ faults: true }),
  rows: z.array(row),
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

export const faultsFile = z.strictObject({
  guide: id,
  source: z.literal('assumption-common-practice'),
  faults: z.record(id, fault),
  evidence: z.record(z.string(), table),
  access: z.record(id, z.strictObject({ minutes })),
  checks: z.record(id, check),
  parts: z.record(id, z.strictObject({ cost: z.number().positive() })),
  'fixed-order': z.array(id),
});

export type FaultsFile = z.infer<typeof faultsFile>;
export type CheckFile = z.infer<typeof check>;
export type TableFile = z.infer<typeof table>;
