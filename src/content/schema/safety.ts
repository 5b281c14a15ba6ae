import { z } from 'zod';

const said = z.string().trim().min(1);
const count = z.int().min(0);
/** The day a run ended; what it looked at may have changed since. */
const run = { on: z.iso.date(), with: z.record(z.string(), said) };
const hash = z.string().regex(/^[0-9a-f]{12}$/);

/**
 * `content/safety.json`: what the last runs found. `npm run safety`, `npm run mutants -- code` and
 * `npm run eyes` write a part each, nobody by hand. `with`: program → version.
 */
export const safetySchema = z.strictObject({
  /** Both provers on each guide, by the hash of its structure, and on copies with a slip. */
  provers: z
    .strictObject({
      ...run,
      guides: z.record(
        z.string(),
        z.strictObject({
          structure: hash,
          pages: count,
          /** Decimal: they may pass 2^53. */
          journeys: z.string().regex(/^\d+$/),
          longest: count,
          /** States of the second prover: a page and all that was told. */
          states: count,
          /** Whether verdicts, pages and journeys are the same in both. */
          equal: z.boolean(),
        }),
      ),
      /** States and errors as SPIN counts them, all guides together. */
      spin: z.strictObject({ states: count, errors: count }).optional(),
      slips: z.strictObject({ compared: count, failing: count, unequal: count }),
    })
    .optional(),
  /** Copies of each guide with one slip: how many are unsafe, and how many of these the proof fails. */
  slips: z
    .strictObject({
      ...run,
      guides: z.record(
        z.string(),
        z.strictObject({
          mutants: count,
          refused: count,
          unsafe: count,
          caught: count,
          strict: count,
        }),
      ),
    })
    .optional(),
  /** Slips in the provers' and gates' own code; by file, with its SHA-256. */
  code: z
    .strictObject({
      ...run,
      files: z.record(
        z.string(),
        z.strictObject({ hash, caught: count, survived: count, ignored: count }),
      ),
      /** Files that guard as well and were never tried. */
      left: z.array(said),
    })
    .optional(),
  /** Pages looked at by engines other than axe, in both themes; findings decided in eyes.yaml. */
  eyes: z
    .strictObject({
      ...run,
      pages: count,
      engines: z.record(
        z.string(),
        z.strictObject({ looks: count, findings: count, decided: count }),
      ),
    })
    .optional(),
  /** The study's tasks done by made-up readers: a rehearsal, no evidence about people. */
  rehearsal: z
    .strictObject({
      ...run,
      people: z.array(
        z.strictObject({ reader: said, sessions: count, reached: count, unsafe: count }),
      ),
    })
    .optional(),
});

export type Safety = z.output<typeof safetySchema>;

/** `content/wcag.yaml`: a success criterion's number → what is met of it, and how it was looked at. */
export const wcagSchema = z.record(
  z.string().regex(/^\d\.\d\.\d+$/),
  z.strictObject({
    name: said,
    level: z.enum(['A', 'AA', 'AAA']),
    state: z.enum(['met', 'open', 'none']),
    by: said,
  }),
);

/** `content/study.yaml`: what people are told, and where a guide has to lead them. */
export const studySchema = z.array(
  z.strictObject({ story: said, guide: said, way: said, end: said }),
);

export type Wcag = z.output<typeof wcagSchema>;
export type Task = z.output<typeof studySchema>[number];
