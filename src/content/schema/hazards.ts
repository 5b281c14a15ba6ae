import { z } from 'zod';

const said = z.string().trim().min(1);
const list = z.array(said).min(1).optional();

/** What the harm is, or where it arises; in the order of the file. */
export const groups = [
  ...['Fire', 'Gas', 'Carbon monoxide', 'Shock and power', 'Burns, traps and weight'],
  ...['Fumes and chemicals', 'How a reader uses the guide', 'Software, network and old copies'],
  ...['Languages', 'Office', 'Technician'],
] as const;
/** Who or what brings the harm about. */
const causes = [
  ...['homeowner', 'staff', 'technician', 'software', 'translation', 'network', 'stale-copy'],
] as const;
/** The worst harm that may be expected of it. */
export const severities = ['death', 'serious', 'minor', 'damage'] as const;
/** Who answers for the controls and looks at the residual risk again. */
const owners = ['editor', 'developer', 'firm', 'office', 'technician'] as const;

/** `content/hazards.yaml`: a hazard's name → what it is, what controls it, and what shows that. */
export const hazardsSchema = z.record(
  z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/),
  z.strictObject({
    harm: said,
    group: z.enum(groups),
    causes: z.array(z.enum(causes)).min(1),
    severity: z.enum(severities),
    /** Names in content/sources.json; "practice" or "review" where nothing published says it. */
    sources: z.array(said).min(1),
    controls: z.strictObject({
      /** Stops, pages with a signal word and care pages: `guide:page`, `blocks:page`, `care:page`. */
      pages: list,
      /** Keys of English sentences, `file:key.key`. */
      sentences: list,
      /** Rules of guides: `most page`, `ends-at page.answer`, `needs` or `never-after page page.answer`. */
      rules: list,
      /** Properties of the proof. */
      properties: list,
      /** Files of the project, from its top folder. */
      software: list,
      /** Nothing here controls it, or not all of it. */
      'outside-our-reach': z.literal(true).optional(),
    }),
    evidence: z
      .strictObject({
        properties: list,
        /** Kinds of slips in tests/mutants. */
        mutants: list,
        /** File under tests → titles of tests in it. */
        tests: z.record(z.string(), z.array(said).min(1)).optional(),
        /** Files under tests/bench, without their ending. */
        bench: list,
      })
      .default({}),
    residual: said,
    owner: z.enum(owners),
  }),
);

export type Hazard = z.output<typeof hazardsSchema>[string];
