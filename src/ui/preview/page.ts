/** What the preview page carries besides its sentences; made in `pages`. */
import type { Model } from '../../diagnosis/types.ts';
import type { Library } from '../../note/library.ts';
import type { Words } from '../client/words.ts';

export interface Carried {
  readonly demos: readonly { readonly id: string; readonly code: string }[];
  /** Guide → its stops at which the breaker stays off. */
  readonly breakerOff: Readonly<Record<string, readonly string[]>>;
  /** Guide → its diagnosis model. */
  readonly models: Readonly<Record<string, Model>>;
}

/** What every part of the page reads. */
export interface Page extends Carried {
  readonly words: Words;
  readonly library: Library;
}
