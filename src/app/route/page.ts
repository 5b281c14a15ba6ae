import type { Codebooks } from '../../note/codebook.ts';
import type { KeepCaller } from '../desk/page.ts';
import type { Words } from '../shared/words.ts';
import type { Guides } from './guides.ts';

/** What every part of the page reads. */
export interface Page {
  readonly words: Words;
  readonly codebooks: Codebooks;
  /** Fills them: a route is first typed or pasted. */
  readonly addBooks: () => Promise<void>;
  readonly guides: Guides;
  readonly keepCaller: KeepCaller;
}
