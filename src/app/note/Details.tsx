import { For, Show, createMemo, createSignal } from 'solid-js';
import type { AskTable } from '../../diagnosis/ask-table.ts';
import type { Codebook } from '../../note/codebook.ts';
import { detailAnswer, detailName } from '../shared/content-words.ts';
import type { Words } from '../shared/words.ts';
import { knownDetails, type LeftOut } from './code.ts';
import { Field } from './Field.tsx';
import type { NoteState } from './state.ts';
import type { Traced } from './traced.ts';

/** So many are asked without a further tap, where they tell a few hundredths of a bit. */
const FIRST = 3;
const WORTH = 3;
/**
 * What goes into the code: the details that tell most after this journey, the rest behind a tap,
 * and the display's text. What would tell nothing is not asked.
 */
export function Details(props: {
  words: Words;
  codebook: Codebook;
  state: NoteState;
  traced: Traced;
  ask: AskTable | undefined;
  leftOut: LeftOut | undefined;
}) {
  const t: Words['t'] = (key, facts) => props.words.t(key, facts);
  const chosen = () => knownDetails(props.codebook, props.state.fragment().details);
  const choose = (id: string, answer: string) => {
    const { [id]: before, ...rest } = chosen();
    props.state.change({ details: before === answer ? rest : { ...rest, [id]: answer } });
  };
  const [all, setAll] = createSignal(false);
  // What was answered before stands first, and nothing moves under the finger.
  // eslint-disable-next-line solid/reactivity -- as it was when the page came
  const answered = Object.keys(chosen());
  const worth = createMemo(() => {
    const { base = [], by = {} } = props.ask ?? {};
    const score = (place: number) =>
      props.traced.steps.reduce(
        (sum, { node, edge }) => sum + (by[node.sentences]?.[edge.id]?.[place] ?? 0),
        base[place] ?? 1,
      );
    return props.codebook.details
      .map((detail, place) => ({
        ...detail,
        score: answered.includes(detail.id) ? Infinity : score(place),
      }))
      .filter(({ score }) => score >= 1)
      .sort((a, b) => b.score - a.score);
  });
  const first = () =>
    worth().filter(({ score }, place) => score === Infinity || (place < FIRST && score >= WORTH));
  /** The display's text is asked for where an error was told of. */
  const withText = () =>
    all() ||
    props.state.fragment().error !== undefined ||
    props.traced.steps.some(({ edge }) => String(edge.id) === 'error');
  const leftOut = () => {
    if (props.leftOut?.code === 'characters')
      return t('note:more.characters', { characters: props.leftOut.characters.join(' ') });
    return props.leftOut && t('note:more.tooLong', { most: props.leftOut.most });
  };
  return (
    <section class="card details">
      <h2>{t('note:more.title')}</h2>
      <p class="no-print">{t('note:more.text')}</p>
      <For each={all() ? worth() : first()}>
        {({ id, answers }) => (
          <div role="group" aria-labelledby={`ask-${id}`} class={chosen()[id] ? '' : 'empty'}>
            <p id={`ask-${id}`}>{detailName(props.words, 'note', id)}</p>
            <For each={answers}>
              {(answer) => (
                <button
                  type="button"
                  class="plain"
                  aria-pressed={chosen()[id] === answer}
                  onClick={() => choose(id, answer)}
                >
                  {detailAnswer(props.words, 'note', id, answer)}
                </button>
              )}
            </For>
          </div>
        )}
      </For>
      <Show when={withText()}>
        <Field words={props.words} state={props.state} name="error">
          <span class="left-out" role="status">
            <Show when={leftOut()}>{(sentence) => <bdi>{sentence()}</bdi>}</Show>
          </span>
        </Field>
      </Show>
      <Show when={!all()}>
        <button type="button" class="plain no-print" onClick={() => setAll(true)}>
          {t('note:more.rest')}
        </button>
      </Show>
    </section>
  );
}
