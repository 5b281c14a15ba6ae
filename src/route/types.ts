import type { NoteCode, Reading } from '../note/types.ts';
import type { Assessed } from '../visit/assess.ts';
import type { VisitView } from '../visit/read-visit.ts';

/** A visit of a round: a line that was read and, where it was repaired, confirmed. */
export interface PlannedVisit {
  readonly row: number;
  /** The columns carried along. */
  readonly others: readonly string[];
  readonly code: NoteCode;
  readonly seen: VisitView;
  /** Undefined where its guide has no figures. */
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
