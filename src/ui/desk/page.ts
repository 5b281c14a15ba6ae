/** What the desk carries besides its sentences and note books; made in `pages`. */
import type { Signal, Timer } from '../../guide/types.ts';
import type { Remaining } from '../../guide/walk.ts';
import type { Book, Library } from '../../note/library.ts';
import type { Words } from '../client/words.ts';
import type { Calls } from '../note/calls.ts';

/** What a note book does not say of a node. */
export interface CarriedNode {
  readonly care?: Signal;
  readonly timer?: Timer;
  readonly takesError?: true;
  readonly breakerStaysOff?: true;
  readonly left: Remaining;
  /** How many of the node’s ways in the book are its own answers; the rest are exits. */
  readonly answers: number;
}

export interface Carried {
  /** Guide → node → the rest of it. */
  readonly nodes: Readonly<Record<string, Readonly<Record<string, CarriedNode>>>>;
  /** By guide. */
  readonly calls: Readonly<Record<string, Calls>>;
  readonly keepCaller: 'never' | 'tab';
}

/** What every part of the desk reads. */
export interface Page extends Carried {
  readonly words: Words;
  readonly library: Library;
  readonly book: Book;
}
