import type { SourcePosition } from '../guide/problem.ts';

/** Something wrong in the evidence model, as data; the command line turns it into words. */
export type ModelProblemCode =
  /** Not YAML as it is taken here. Facts: `yaml`, the reason; `first`, the line of a doubled key's first. */
  | 'not-yaml'
  /** Not the shape of the schema. Facts: `issue`, the schema's own code. */
  | 'wrong-shape'
  /** A name that nothing declares. Facts: `name`. */
  | 'unknown-fault'
  | 'unknown-part'
  | 'unknown-access'
  | 'unknown-check'
  /** The figures are another guide's. Facts: `name`, `expected`. */
  /** No node or detail has this key. Facts: `name`. */
  | 'unknown-evidence'
  /** The node or detail has no such answer. Facts: `name`. */
  | 'unknown-answer'
  /** `unsure` never carries information. */
  | 'unsure-is-no-evidence'
  /** Listed twice. Facts: `name`. */
  | 'twice'
  /** Facts: `sum`. */
  | 'priors-do-not-sum-to-one'
  | 'row-does-not-sum-to-one'
  /** Facts: `expected`, `found`. */
  | 'row-length'
  /** Facts: `name`. */
  | 'unknown-fact'
  | 'unknown-value'
  | 'unknown-guide'
  /** `is` in a table that is about no fact. */
  | 'is-about-nothing'
  /** A row that names neither faults nor a condition. */
  | 'row-of-nothing'
  /** Facts: `found`, how many results rule nothing in. */
  | 'not-one-clear-result'
  /** The two figures leave nothing for the clear result. Facts: `fault`. */
  | 'no-room-for-clear-result'
  /** No check finds it. Facts: `name`. */
  | 'fault-without-check'
  /** A reading of resistance without supply proved dead and wires off, or a live one that claims it. */
  | 'unsafe-reading'
  /** Checks wait for each other. Facts: `name`. */
  | 'checks-in-a-circle'
  /** A check comes before one it needs. Facts: `name`. */
  | 'order-breaks-after';

export interface ModelProblem {
  readonly file: string;
  readonly place: SourcePosition;
  /** The way to the value inside the file, keys joined by dots. */
  readonly path: string;
  readonly code: ModelProblemCode;
  readonly facts: Readonly<Record<string, string | number>>;
}

/** Reports a problem at a path of the file. */
export type Report = (
  path: readonly PropertyKey[],
  code: ModelProblemCode,
  facts?: Readonly<Record<string, string | number>>,
) => void;
