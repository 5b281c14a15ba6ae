import { For, Show, createEffect } from 'solid-js';
import type { CodebookNode } from '../../note/codebook.ts';
import { answerWords, nodeWords } from '../shared/content-words.ts';
import { Key } from './Key.tsx';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** The whole journey so far; any answer can be gone back to and changed. */
export function Journey(props: DeskProps) {
  const t = sayer(props);
  const asked = (node: CodebookNode) => nodeWords(props.page.words, props.desk.guide, node).short;
  const said = (node: CodebookNode, answer: string) =>
    answerWords(props.page.words, props.desk.guide, node, answer);
  const at = () => {
    const view = props.desk.journey.view();
    return view.kind === 'at' ? view.index : -1;
  };
  let list: HTMLOListElement | undefined;
  createEffect(() => {
    const place = at();
    // What is looked at stays in sight without the page moving.
    const row = list?.children[place];
    if (list && row instanceof HTMLElement)
      list.scrollTop = Math.max(0, row.offsetTop - list.clientHeight / 2);
  });
  return (
    <section class="panel journey">
      <h2>
        {t('desk:journey.title')} <Key of="←" /> <Key of="→" />
      </h2>
      <Show
        when={props.desk.journey.length() > 0}
        fallback={<p class="quiet">{t('desk:journey.none')}</p>}
      >
        <ol ref={(element) => (list = element)}>
          <For each={props.desk.journey.traced().steps}>
            {({ node, edge }, index) => (
              <li>
                <button
                  type="button"
                  aria-current={at() === index() ? 'step' : undefined}
                  title={t('desk:journey.change')}
                  onClick={() => props.desk.journey.go(index())}
                >
                  <span>{asked(node)}</span>
                  <strong>{said(node, edge.id)}</strong>
                </button>
              </li>
            )}
          </For>
          <li>
            <button
              type="button"
              class="here"
              aria-current={at() === props.desk.journey.length() ? 'step' : undefined}
              onClick={() => props.desk.journey.go(props.desk.journey.length())}
            >
              <span>{t('desk:journey.here')}</span>
              <strong>{asked(props.desk.journey.traced().end)}</strong>
            </button>
          </li>
        </ol>
      </Show>
      <Show when={props.desk.journey.edited().later.length > 0}>
        <p class="quiet later">
          {t('desk:status.waiting', { count: props.desk.journey.edited().later.length })}
        </p>
      </Show>
    </section>
  );
}
