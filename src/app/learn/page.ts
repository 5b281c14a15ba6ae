/** What the learning page loads once it has visits; made in `site/data`. */
import type { ModelFile } from '../../diagnosis/schema.ts';
import type { Selection } from '../../diagnosis/selection.ts';
import type { Words } from '../shared/words.ts';

export interface LearnPart {
  readonly model: ModelFile;
  readonly selection: Selection;
  /** The authors' files of figures as they are, to the letter. */
  readonly sources: readonly { readonly file: string; readonly source: string }[];
  readonly faults: Readonly<Record<string, string>>;
  /** Key of a table → its question and what its answers are called. */
  readonly questions: Readonly<
    Record<string, { readonly title: string; readonly answers: Readonly<Record<string, string>> }>
  >;
}

/** What every part of the page reads. */
export interface Page {
  readonly words: Words;
  /** The address of the part. */
  readonly part: string;
}
