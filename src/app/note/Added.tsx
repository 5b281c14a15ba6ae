import { For, Show } from 'solid-js';
import type { Fragment } from '../../address/fragment.ts';
import type { Codebook } from '../../note/codebook.ts';
import type { Words } from '../shared/words.ts';
import { detailAnswer, detailName } from '../shared/content-words.ts';
import { knownDetails } from './code.ts';

/** What was added to the answers, for paper: on the screen the fields themselves show it. */
export function Added(props: { words: Words; codebook: Codebook; fragment: Fragment }) {
  const texts = () => {
    const { error, model, remark } = props.fragment;
    const given = [
      ['note:more.error', error],
      ['note:more.model', model],
      ['note:more.remark', remark],
    ] as const;
    return given.flatMap(([key, text]) => (text ? [[props.words.t(key), text] as const] : []));
  };
  const details = () =>
    Object.entries(knownDetails(props.codebook, props.fragment.details)).map(
      ([id, answer]) =>
        [
          detailName(props.words, 'note', id),
          detailAnswer(props.words, 'note', id, answer),
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
