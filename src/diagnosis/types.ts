/**
 * The diagnosis model of one guide: what may be wrong, how likely each answer is
 * for each fault, which checks find it, which parts cure it. Loaded from
 * `faults.yaml` by `load.ts`; plain JSON, so that a page can carry it.
 *
 * Assumptions, throughout: exactly one fault is present; given the fault, the
 * answers are independent; every figure is an assumption of the trade.
 */
declare const brand: unique symbol;
type Branded<K extends string> = string & { readonly [brand]: K };

/** A fault's name, the key of its sentences. Minted by the loader. */
export type FaultId = Branded<'FaultId'>;
/** A technician's test. */
export type CheckId = Branded<'CheckId'>;
/** Something to load on the van. */
export type PartId = Branded<'PartId'>;
/** Something to open or do once that serves several checks. */
export type AccessId = Branded<'AccessId'>;
/** What a check can show, unique inside its check. */
export type ResultId = Branded<'ResultId'>;

export interface Fault {
  readonly id: FaultId;
  /** Share of visits with this fault before any answer; all priors sum to 1. */
  readonly prior: number;
  /** All the parts the repair needs; empty when it needs none. */
  readonly parts: readonly PartId[];
}

/** P(answer | fault) for one question of the guide or one optional detail. */
export interface EvidenceTable {
  /** A node's text id (`listen`), or `detail.` and a detail's id (`detail.fuel`). */
  readonly key: string;
  /** The answers that carry information. Any other answer (`unsure`) carries none. */
  readonly answers: readonly string[];
  /** Each row is a distribution over `answers`; row 0 is the default one. */
  readonly rows: readonly (readonly number[])[];
  /** For each fault, in the model's order, the index of its row. */
  readonly rowOf: readonly number[];
}

export interface AccessGroup {
  readonly id: AccessId;
  /** Minutes to open and close again, counted once however many checks use it. */
  readonly minutes: number;
}

/** How a check is read; readings of resistance need the wires off the part. */
export const readings = ['look', 'resistance', 'voltage', 'drive'] as const;
export type ReadingKind = (typeof readings)[number];
/** The pages that judge a reading. */
export const benches = ['sensor'] as const;

export interface CheckResult {
  readonly id: ResultId;
  /** The faults this result rules in. Empty for the one result that finds nothing wrong. */
  readonly pointsTo: readonly FaultId[];
}

export interface Check {
  readonly id: CheckId;
  /** Minutes of the test itself, access not counted. */
  readonly minutes: number;
  readonly access: readonly AccessId[];
  readonly reading: ReadingKind;
  /** The page that judges what was read, where there is one. */
  readonly bench?: (typeof benches)[number];
  /** The supply is off and proved dead while hands are inside; false only for live readings. */
  readonly provedDead: boolean;
  /** Wires come off the part before the reading. */
  readonly wiresOff: boolean;
  readonly tools: readonly string[];
  readonly skills: readonly string[];
  readonly cautions: readonly string[];
  /** The part a bad result condemns, where there is one. */
  readonly condemns?: PartId;
  /** Checks that must come first for this one to be conclusive. */
  readonly after: readonly CheckId[];
  readonly results: readonly CheckResult[];
  /** P(result | fault): for each fault, in the model's order, a row over `results`. */
  readonly likelihoods: readonly (readonly number[])[];
}

export interface SparePart {
  readonly id: PartId;
  /** Cost of carrying it, relative to the other parts; breaks ties between equally small loads. */
  readonly cost: number;
}

export interface Model {
  readonly guide: string;
  /** Where every figure comes from; the words for it belong to the page. */
  readonly source: 'assumption-common-practice';
  readonly faults: readonly Fault[];
  readonly evidence: readonly EvidenceTable[];
  readonly access: readonly AccessGroup[];
  /** At most 16, so that the plan stays exact. */
  readonly checks: readonly Check[];
  readonly parts: readonly SparePart[];
  /** The usual fixed order of the trade, all checks, to compare a plan with. */
  readonly fixedOrder: readonly CheckId[];
}

/** One answer as evidence: the table's key and the answer's id. */
export interface EvidenceGiven {
  readonly key: string;
  readonly answer: string;
}

/** Answers in the order they were given, at most one for each key. */
export type Evidence = readonly EvidenceGiven[];
