/**
 * The evidence model of the whole range: what may be wrong, how likely each answer is
 * for each fault, which checks find it, which parts cure it. Loaded from `content/model`
 * by `load.ts`; plain JSON, so that a page can carry it, or the cut of it that a guide needs.
 *
 * Assumptions, throughout: exactly one fault is present; given the fault and the hidden
 * facts, the answers are independent; every figure is an assumption of the trade.
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
  /** Share of calls with this fault before anything is told; all priors sum to 1. */
  readonly prior: number;
  /** All the parts the repair needs; empty when it needs none. */
  readonly parts: readonly PartId[];
  /** Where in the range it sits, where that is one place. */
  readonly place?: string;
  /** It stands for all that is not listed: no part and no check is known for it. */
  readonly unlisted?: true;
}

/** Something true of the range that nobody sees as such, and that several answers tell of. */
export interface Fact {
  readonly id: string;
  readonly values: readonly string[];
  /** P(value | fault): distributions over `values`; row 0 is the default one. */
  readonly rows: readonly (readonly number[])[];
  /** For each fault, in the model's order, the index of its row. */
  readonly rowOf: readonly number[];
}

/** When a row of a table speaks in place of the fault's own; all that is named must hold. */
export interface Rule {
  /** The index of the row that speaks. */
  readonly row: number;
  /** Places of the faults in the model; all faults where left out. */
  readonly faults?: readonly number[];
  /** Hidden facts: the place of the fact, and the places of its values of which one holds. */
  readonly if?: readonly (readonly [fact: number, values: readonly number[]])[];
  /** Other answers that were given: the key, and the answers of which one was given. */
  readonly given?: readonly (readonly [key: string, answers: readonly string[]])[];
}

/** P(answer | fault, facts, earlier answers) for one page, one detail, the complaint or the visit. */
export interface EvidenceTable {
  /**
   * A page's text id (`listen`), with its guide before it where guides have pages of that name
   * (`no-heat/when`); `detail.` and a detail's id; `complaint`; `visit`.
   */
  readonly key: string;
  /** The answers that carry information. Any other answer (`unsure`) carries none. */
  readonly answers: readonly string[];
  /** Each row is a distribution over `answers`; row 0 is the default one. */
  readonly rows: readonly (readonly number[])[];
  /** For each fault, in the model's order, the index of its row. */
  readonly rowOf: readonly number[];
  /** The first that holds speaks in place of `rowOf`. */
  readonly rules?: readonly Rule[];
  /** Answer → keys whose answers then count for nothing: it tells what became of them. */
  readonly supersedes?: Readonly<Record<string, readonly string[]>>;
  /** Pages → their answers that have told this already: it then counts for nothing. */
  readonly told?: Readonly<Record<string, readonly string[]>>;
  /** Pages → their answers → this table's answer that each is, and need not be asked. */
  readonly tells?: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

export interface AccessGroup {
  readonly id: AccessId;
  /** Minutes to open and close again, counted once however many checks use it. */
  readonly minutes: number;
  /** Answer to the detail `kind` → minutes on a range of that kind. */
  readonly kinds?: Readonly<Record<string, number>>;
  /** Answer to the detail `kind` → the access that serves there in place of this one. */
  readonly instead?: Readonly<Record<string, AccessId>>;
  /** Asked for only where the oven door is locked; it opens by hand else. */
  readonly when?: 'locked';
  /** What must be open before. */
  readonly after?: readonly AccessId[];
  readonly cautions?: readonly string[];
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

/** Whether one serves nearly all ranges, or each model has its own. */
export const fits = ['any', 'model'] as const;

export interface SparePart {
  readonly id: PartId;
  /** What the firm pays for it, in its money. */
  readonly price: number;
  readonly fits: (typeof fits)[number];
  /** Parts that it comes with, and so stands in for; only where it fits by model. */
  readonly covers?: readonly PartId[];
}

/** What a load is weighed with, in the firm's money: `content/firm.yaml`. */
export interface Costs {
  /** ISO 4217. */
  readonly currency: string;
  readonly secondVisit: number;
  /** An hour of work. */
  readonly hourlyRate: number;
  /** Having a part along on a visit costs so much of its price. */
  readonly carrying: number;
}

export interface Model {
  /** The guide that a cut of the model is for; empty for the whole. */
  readonly guide: string;
  /** Where every figure comes from; the words for it belong to the page. */
  readonly source: 'assumption-common-practice';
  readonly faults: readonly Fault[];
  readonly facts?: readonly Fact[];
  readonly evidence: readonly EvidenceTable[];
  readonly access: readonly AccessGroup[];
  readonly checks: readonly Check[];
  readonly parts: readonly SparePart[];
  /** The firm's own. */
  readonly costs: Costs;
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
