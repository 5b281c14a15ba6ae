import { Show, createMemo, type JSX } from 'solid-js';
import type { Marks } from '../../guide/marks.ts';
import { makeCodebooks, type Codebooks } from '../../note/codebook.ts';
import type { Release } from '../../note/release.ts';
import { Fetching } from './Fetching.tsx';
import { embedded } from './embedded.ts';
import { createFetched, type Fetched } from './fetched.ts';
import type { Words } from './words.ts';

/** The codebooks of all releases, marked with what the page carries; there once each has come. */
function createCodebooks(): Fetched<Codebooks> {
  const files = embedded('releases') as readonly string[];
  const marks = embedded('marks') as Marks;
  const all = files.map((file) => createFetched<Release>(() => file));
  const codebooks = createMemo(() => {
    const come = all.flatMap((one) => one.value() ?? []);
    return come.length === all.length ? makeCodebooks(come, marks) : undefined;
  });
  return {
    value: codebooks,
    problem: () => all.map((one) => one.problem()).find((problem) => problem !== undefined),
    retry: () => all.filter((one) => one.problem()).forEach((one) => one.retry()),
  };
}

/** What reads codes, drawn once the codebooks are there. */
export function WithCodebooks(props: {
  readonly words: Words;
  readonly children: (codebooks: Codebooks) => JSX.Element;
}): JSX.Element {
  const fetched = createCodebooks();
  return (
    <Show
      when={fetched.value()}
      keyed
      fallback={<Fetching words={props.words} fetched={fetched} />}
    >
      {(codebooks) => props.children(codebooks)}
    </Show>
  );
}
