import { For, Show } from 'solid-js';
import type { Fragment } from '../../address/fragment.ts';
import type { Book } from '../../note/library.ts';
import type { Words } from '../shared/words.ts';
import { knownDetails } from './code.ts';

/** What was added to the answers, for paper: on the screen the fields themselves show it. */
export function Added(props: { words: Words; book: Book; fragment: Fragment }) {
  const texts = () => {
    const { error, model, remark } = props.fragment;
    return Object.entries({ error, model, remark }).flatMap(([name, text]) =>
      text ? [[props.words.t(`more.${name}`), text] as const] : [],
    );
  };
  const details = () =>
    Object.entries(knownDetails(props.book, props.fragment.details)).map(
      ([id, answer]) =>
        [
          props.words.t(`details.${id}.label`),
          props.words.t(`details.${id}.answers.${answer}`),
        ] as const,
    );
  const all = () => [...texts(), ...details()];
  return (
    <Show when={all().length > 0}>
      <dl class="added only-print">
        <For each={all()}>
          {([name, value]) => (
            <div>
              <dt>{name}</dt>
              <dd>
                <bdi>{value}</bdi>
              </dd>
            </div>
          )}
        </For>
      </dl>
    </Show>
  );
}
