/** What the desk carries besides its sentences and codebooks; made in `pages`. */
import type { Signal, Timer } from '../../guide/types.ts';
import type { Codebook, Codebooks } from '../../note/codebook.ts';
import type { Words } from '../shared/words.ts';
import type { Calls } from '../note/calls.ts';

/** What a codebook does not say of a node. */
export interface DeskNode {
  readonly caution?: Signal;
  readonly timer?: Timer;
  readonly takesError?: true;
  readonly breakerStaysOff?: true;
  /** About how many questions follow, where that can be said. */
  readonly more?: number;
}

/** Whether what is known of a caller outlives a reload: `desk: keep-caller` of `content/firm.yaml`. */
export type KeepCaller = 'never' | 'tab';

export interface DeskConfig {
  readonly keepCaller: KeepCaller;
  /** Guide → the address of the preview's part: what the likely parts of a job are told by. */
  readonly figures: Readonly<Record<string, string>>;
}

/** What the desk loads for a guide; made in `site/data`. */
export interface DeskPart {
  /** Node → the rest of it. */
  readonly nodes: Readonly<Record<string, DeskNode>>;
  readonly calls: Calls;
  /** Sentences of the guide and of those it hands over to. */
  readonly texts: Readonly<Record<string, unknown>>;
}

/** What is there before a guide is chosen. */
export interface Shell extends DeskConfig {
  readonly words: Words;
  readonly codebooks: Codebooks;
  readonly codebook: Codebook;
  /** Guide → the address of its part, the main guide's first. */
  readonly files: Readonly<Record<string, string>>;
}

/** What every part of the desk reads in a call. */
export type Page = Shell & DeskPart;
