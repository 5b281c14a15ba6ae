/** One measured figure. */
export interface Row {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** Most it may be. */
  readonly ceiling?: number;
  /** Least it must be. */
  readonly floor?: number;
  /** How it was measured, in a few words. */
  readonly note?: string;
}

/** What a file of this folder exports: measures and returns its figures. */
export type Bench = () => Promise<Row[]>;
