/** What the preview page carries besides its sentences; made in `pages`. */
import type { Figures } from '../../visit/read-visit.ts';
import type { Codebooks } from '../../note/codebook.ts';
import type { Words } from '../shared/words.ts';

/** The newest release, its guides in its order, and guide → where what its codes need of it is. */
export interface Newest {
  readonly release: number;
  readonly guides: readonly string[];
  readonly files: Readonly<Record<string, string>>;
}

export interface PreviewConfig {
  readonly demos: readonly { readonly id: string; readonly code: string }[];
  readonly newest: Newest | undefined;
}

/** What the page loads for the guide a code is of; made in `site/data`. */
export interface PreviewPart extends Figures {
  /** Sentences of the guide and of those it hands over to. */
  readonly texts: Readonly<Record<string, unknown>>;
}

/** What every part of the page reads. */
export interface Page extends PreviewConfig, Omit<PreviewPart, 'texts'> {
  /** Guide → the address of its part. */
  readonly files: Readonly<Record<string, string>>;
  readonly words: Words;
  readonly codebooks: Codebooks;
}
