/** Whom a stop sends the reader to, as the page carries it. */
export interface Call {
  readonly label: string;
  readonly show: string;
  readonly dial: string;
}

/** A guide's node → calls in their order. */
export type Calls = Readonly<Record<string, readonly Call[]>>;
