/** What the note page loads for the guide its journey began in; made in `site/data`. */
import type { AskTable } from '../../diagnosis/ask-table.ts';
import type { Release } from '../../note/release.ts';
import type { Calls } from './calls.ts';

export interface NotePart {
  readonly guide: string;
  /** The newest release, or where it does not have the guide yet, the guide as it is now. */
  readonly release: Release;
  /** Whether the guide is in the release: else no code can be written. */
  readonly frozen: boolean;
  /** Sentences of the guide and of those it hands over to. */
  readonly texts: Readonly<Record<string, unknown>>;
  readonly calls: Calls;
  /** Which details to ask; undefined for a guide that the model does not know. */
  readonly ask?: AskTable;
}
