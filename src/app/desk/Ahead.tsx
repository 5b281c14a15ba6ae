import { For, Show, createMemo, createSignal } from 'solid-js';
import type { AnswerId } from '../../guide/types.ts';
import type { CodebookNode } from '../../note/codebook.ts';
import { pageKey } from '../../journey/edit.ts';
import { answerWords, nodeWords } from '../shared/content-words.ts';
import { Key } from './Key.tsx';
import { letters } from './keys.ts';
import { deskNodeOf, UNSURE } from './nodes.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** Most answers shown that have the words typed. */
const SHOWN = 5;

/** What callers say before they are asked: it waits until the call comes to its question. */
export function Ahead(props: DeskProps) {
  const t = sayer(props);
  const [typed, setTyped] = createSignal('');
  const answers = createMemo(() => {
    const { guide, journey } = props.desk;
    const given = new Set(journey.edited().journey.map(({ at }) => at));
    const open = [...guide.nodes.values()].filter(
      (node) => deskNodeOf(props.page, node).ahead === true && !given.has(node.id),
    );
    // A page is one on all its tracks.
    const pages = new Map<string, CodebookNode>(open.map((node) => [pageKey(node), node]));
    return [...pages.values()].flatMap((node) =>
      node.answers.flatMap(({ id, to }) => {
        // Danger is answered at once, never noted.
        const danger = guide.nodes.get(to)?.urgency === 'emergency';
        if (danger || (id as string) === UNSURE) return [];
        const words = answerWords(props.page.words, guide, node, id);
        return [
          { at: node.id, answer: id, words, of: nodeWords(props.page.words, guide, node).short },
        ];
      }),
    );
  });
  const found = () => {
    const words = typed().toLowerCase().split(/\s+/).filter(Boolean);
    if (words.length === 0) return [];
    return answers()
      .filter(({ of, words: said }) =>
        words.every((word) => `${of} ${said}`.toLowerCase().includes(word)),
      )
      .slice(0, SHOWN);
  };
  const take = (one: { at: CodebookNode['id']; answer: AnswerId } | undefined): void => {
    if (!one) return;
    props.desk.journey.ahead(one);
    setTyped('');
    document.getElementById('desk-say')?.focus();
  };
  return (
    <section class="panel ahead">
      <p class="field">
        <label for="desk-ahead">
          {t('desk:ahead.title')} <Key of={letters.ahead} />
        </label>
        <input
          id="desk-ahead"
          type="text"
          autocomplete="off"
          maxlength="60"
          placeholder={t('desk:ahead.hint')}
          value={typed()}
          onInput={({ currentTarget }) => setTyped(currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || event.isComposing) return;
            event.preventDefault();
            take(found()[0]);
          }}
        />
      </p>
      <Show when={found().length > 0}>
        <ul class="choices">
          <For each={found()}>
            {(one) => (
              <li>
                <button type="button" onClick={() => take(one)}>
                  <span>
                    {one.words} <small>{one.of}</small>
                  </span>
                </button>
              </li>
            )}
          </For>
        </ul>
      </Show>
    </section>
  );
}
