import type { NoteCode, Reading } from '../note/types.ts';
import type { Assessed } from '../visit/assess.ts';
import type { VisitView } from '../visit/read-visit.ts';

/** A visit of a route: a line that was read and, where it was repaired, confirmed; or one without a code yet. */
export interface PlannedVisit {
  readonly row: number;
  /** The columns carried along. */
  readonly others: readonly string[];
  /** What the code says; neither is there before the code is. */
  readonly code: NoteCode | undefined;
  readonly seen: VisitView | undefined;
  /** Undefined where its guide has no figures, and in an emergency: others must release that first. */
  readonly assessed: Assessed | undefined;
}

/** A line that is no visit yet: refused, or a proposal that nobody has confirmed. */
export interface Unread {
  readonly row: number;
  readonly others: readonly string[];
  readonly text: string;
  readonly reading: Exclude<Reading, { kind: 'exact' }>;
}

export interface Route {
  /** Headings of the columns carried along. */
  readonly columns: readonly string[];
  /** In the order of the day. */
  readonly visits: readonly PlannedVisit[];
  readonly unread: readonly Unread[];
}
