import type { JSX } from 'solid-js';
import type { Words } from './words.ts';

/** A sentence in which what is English says so, for voices (WCAG 2.2, 3.1.2), as in what is built. */
export function marked({ english }: Words, sentence: string): JSX.Element {
  if (english === undefined) return sentence;
  const parts = sentence.split(new RegExp(english, 'u'));
  return parts.map((part, i) => (i % 2 === 1 ? <bdi lang="en">{part}</bdi> : part));
}
