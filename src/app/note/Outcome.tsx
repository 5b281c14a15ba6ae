import { For, Show } from 'solid-js';
import type { Fragment } from '../../address/fragment.ts';
import type { Words } from '../shared/words.ts';
import type { Calls } from './calls.ts';
import type { Traced } from './traced.ts';
import { nodeWords } from '../shared/content-words.ts';
import { hashOf, pageOf } from './state.ts';

/** How the journey ended and what to do next; an unfinished one goes on from here. */
export function Outcome(props: { words: Words; traced: Traced; calls: Calls; fragment: Fragment }) {
  const over = () => props.traced.state !== 'open';
  const end = () => props.traced.end;
  const title = () => nodeWords(props.words, props.traced.guide, end()).title;
  const page = () => pageOf(props.traced.guide, end().id) + hashOf(props.fragment);
  const calls = () => props.calls[end().id] ?? [];
  const next = () => {
    if (!over()) return 'note:open.text';
    if (end().urgency === 'emergency') return 'note:next.emergency';
    return end().kind === 'stop' ? 'note:next.stop' : 'note:next.finish';
  };
  return (
    <section class={`card outcome ${over() ? end().kind : 'open'} ${end().urgency}`}>
      <p class="urgency">
        {props.words.t(over() ? `note:urgency.${end().urgency}` : 'note:open.title')}
      </p>
      <h2>{title()}</h2>
      <Show when={calls().length > 0}>
        <ul class="calls">
          <For each={calls()}>
            {(call) => (
              <li>
                <a href={`tel:${call.dial}`}>
                  <span>{call.label}</span>
                  <strong>{call.show}</strong>
                </a>
              </li>
            )}
          </For>
        </ul>
      </Show>
      <p>{props.words.t(next())}</p>
      <p class="no-print">
        <a class={`button ${over() ? 'plain' : ''}`} href={page()}>
          {props.words.t(over() ? 'note:again' : 'note:open.go')}
        </a>
      </p>
    </section>
  );
}
