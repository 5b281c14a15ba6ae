import { For, Show } from 'solid-js';
import { answerWords, nodeWords, type NodeWords } from '../shared/content-words.ts';
import { marked } from '../shared/marked.tsx';
import type { Words } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** A part of a node that is one sentence, or one line of a part that is a list. */
type Part = 'title' | 'callNote' | readonly [ListPart, number] | { readonly answer: string };
type ListPart = 'help' | 'lines' | 'now' | 'care' | 'never';

const textOf = (words: NodeWords, part: Exclude<Part, { answer: string }>): string =>
  typeof part === 'string' ? words[part] : (words[part[0]][part[1]] ?? '');

/** What is said to the caller, in the caller's language; then the staff's own stands below it. */
export function Aloud(props: DeskProps & { readonly part: Part }) {
  const of = (words: Words): string => {
    const { part, desk } = props;
    const node = desk.journey.node();
    return typeof part === 'object' && 'answer' in part
      ? answerWords(words, desk.guide, node, part.answer)
      : textOf(nodeWords(words, desk.guide, node), part);
  };
  const own = () => marked(props.page.words, of(props.page.words));
  return (
    <Show when={props.page.said()} fallback={own()}>
      {(words) => (
        <>
          <span lang={words().language}>{of(words())}</span> <small class="own">{own()}</small>
        </>
      )}
    </Show>
  );
}

/** All lines of a part, as items of a list. */
export function AloudLines(props: DeskProps & { readonly of: ListPart }) {
  const lines = () => nodeWords(props.page.words, props.desk.guide, props.desk.journey.node());
  return (
    <For each={lines()[props.of]}>
      {(_, i) => (
        <li>
          <Aloud {...props} part={[props.of, i()]} />
        </li>
      )}
    </For>
  );
}
