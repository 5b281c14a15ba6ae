/** What the desk carries besides its sentences and codebooks; made in `pages`. */
import type { Signal, Timer } from '../../guide/types.ts';
import type { Codebook, Codebooks } from '../../note/codebook.ts';
import type { Release } from '../../note/release.ts';
import type { Words } from '../shared/words.ts';
import type { Calls } from '../note/calls.ts';

/** What a codebook does not say of a node. */
export interface DeskNode {
  readonly caution?: Signal;
  readonly timer?: Timer;
  readonly takesError?: true;
  readonly breakerStaysOff?: true;
  /** The answer that every line of `help` must be true for; each of them is ticked. */
  readonly each?: string;
  /** Its answer may be noted before it is asked. */
  readonly ahead?: true;
  /** Answer → the details that it tells, and need not be asked for. */
  readonly tells?: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** About how many questions follow, where that can be said. */
  readonly more?: number;
}

/** Whether what is known of a caller outlives a reload: `desk: keep-caller` of `content/firm.yaml`. */
export type KeepCaller = 'never' | 'tab';

/** A language callers are spoken to in, besides the page's own. */
export interface Spoken {
  /** What it calls itself. */
  readonly name: string;
  /** Guide → the address of its part. */
  readonly files: Readonly<Record<string, string>>;
}

export interface DeskConfig {
  /** Language → where its sentences are. */
  readonly spoken: Readonly<Record<string, Spoken>>;
  /** What the page's own language calls itself. */
  readonly ownName: string;
  readonly keepCaller: KeepCaller;
  /** Guide → the address of the preview's part: what the likely parts of a job are told by. */
  readonly figures: Readonly<Record<string, string>>;
}

/** What the desk loads for a guide; made in `site/data`. */
export interface DeskPart {
  /** Of the newest release what calls of the guide need: its codes are written by it. */
  readonly release?: Release;
  /** Node → the rest of it. */
  readonly nodes: Readonly<Record<string, DeskNode>>;
  readonly calls: Calls;
  /** Sentences of the guide and of those it hands over to. */
  readonly texts: Readonly<Record<string, unknown>>;
}

/** What is there before a guide is chosen. */
export interface Shell extends DeskConfig {
  readonly words: Words;
  /** Every release's; empty until a code is to be read. */
  readonly codebooks: Codebooks;
  readonly addBooks: () => Promise<void>;
  /** Guide → the address of its part, the main guide's first. */
  readonly files: Readonly<Record<string, string>>;
}

/** What every part of the desk reads in a call. */
export interface Page extends Shell, DeskPart {
  /** The one that codes are written in. */
  readonly codebook: Codebook;
  /** That one alone, as codes are written. */
  readonly ownBooks: Codebooks;
  /** The guide's sentences in the caller's language, where that is another and they are there. */
  readonly said: () => Words | undefined;
  /** Speak to the caller in a language; '' for the page's own. */
  readonly sayIn: (language: string) => void;
}
