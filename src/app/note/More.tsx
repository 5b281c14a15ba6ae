import { For, Show } from 'solid-js';
import type { Book } from '../../note/library.ts';
import { withEntry } from '../shared/entry.ts';
import { canTuckAway } from '../shared/free-text.ts';
import type { Words } from '../shared/words.ts';
import type { LeftOut } from './code.ts';
import { knownDetails } from './code.ts';
import type { NoteState } from './state.ts';

/** So that the whole address stays under the length `fragment.ts` reads, in any script. */
const MOST = { error: 60, model: 40, remark: 240 } as const;

/** What may be added: the display's text and the details in the code, the rest in the long form. */
export function More(props: {
  words: Words;
  book: Book;
  state: NoteState;
  leftOut: LeftOut | undefined;
}) {
  const t = (key: string) => props.words.t(key);
  const fragment = () => props.state.fragment();
  const chosen = () => knownDetails(props.book, fragment().details);
  const choose = (id: string, answer: string) => {
    props.state.change({ details: withEntry(chosen(), id, answer) });
  };
  const keepsText = canTuckAway();
  const leftOut = () => {
    if (props.leftOut?.code === 'characters')
      return props.words.t('more.characters', { characters: props.leftOut.characters.join(' ') });
    return props.leftOut && props.words.t('more.tooLong', { most: props.leftOut.most });
  };
  return (
    <section class="card more no-print">
      <h2>{t('more.title')}</h2>
      <p>{t('more.text')}</p>
      <p class="field">
        <label for="error">{t('more.error')}</label>
        <span class="quiet" id="error-hint">
          {t('more.errorHint')}
        </span>
        <input
          id="error"
          class="typed"
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          maxlength={MOST.error}
          aria-describedby="error-hint error-said"
          value={fragment().error ?? ''}
          onInput={({ currentTarget }) => props.state.change({ error: currentTarget.value })}
        />
        <span class="left-out" id="error-said" role="status">
          <Show when={leftOut()}>{(sentence) => <bdi>{sentence()}</bdi>}</Show>
        </span>
      </p>
      <div class="details">
        <For each={props.book.details}>
          {({ id, answers }) => (
            <p class="field">
              <label for={`detail-${id}`}>{t(`details.${id}.label`)}</label>
              <select
                id={`detail-${id}`}
                onChange={({ currentTarget }) => choose(id, currentTarget.value)}
              >
                <option value="">{t('more.unanswered')}</option>
                <For each={answers}>
                  {(answer) => (
                    <option value={answer} selected={chosen()[id] === answer}>
                      {t(`details.${id}.answers.${answer}`)}
                    </option>
                  )}
                </For>
              </select>
            </p>
          )}
        </For>
      </div>
      <h3>{t('more.longTitle')}</h3>
      <p class="quiet">
        {t('more.longText')} {t(keepsText ? 'more.inTab' : 'more.inAddress')}
      </p>
      <p class="field">
        <label for="model">{t('more.model')}</label>
        <span class="quiet" id="model-hint">
          {t('more.modelHint')}
        </span>
        <input
          id="model"
          class="typed"
          type="text"
          autocomplete="off"
          spellcheck={false}
          maxlength={MOST.model}
          aria-describedby="model-hint"
          value={fragment().model ?? ''}
          onInput={({ currentTarget }) => props.state.change({ model: currentTarget.value })}
        />
      </p>
      <p class="field">
        <label for="remark">{t('more.remark')}</label>
        <span class="quiet" id="remark-hint">
          {props.words.t('more.remarkHint', { most: MOST.remark })}
        </span>
        <textarea
          id="remark"
          rows="3"
          maxlength={MOST.remark}
          aria-describedby="remark-hint"
          value={fragment().remark ?? ''}
          onInput={({ currentTarget }) => props.state.change({ remark: currentTarget.value })}
        />
      </p>
    </section>
  );
}
