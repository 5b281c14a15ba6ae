import { For, Show } from 'solid-js';
import type { Codebook } from '../../note/codebook.ts';
import { detailAnswer, detailName } from '../shared/content-words.ts';
import { withEntry } from '../shared/entry.ts';
import { canStashFreeText } from '../shared/free-text.ts';
import type { Words } from '../shared/words.ts';
import type { LeftOut } from './code.ts';
import { knownDetails } from './code.ts';
import type { NoteState } from './state.ts';

/** So that the whole address stays under the length `fragment.ts` reads, in any script. */
const MOST = { error: 60, model: 40, remark: 240 } as const;

/** What may be added: the display's text and the details in the code, the rest in the long form. */
export function More(props: {
  words: Words;
  codebook: Codebook;
  state: NoteState;
  leftOut: LeftOut | undefined;
}) {
  const t: Words['t'] = (key, facts) => props.words.t(key, facts);
  const fragment = () => props.state.fragment();
  const chosen = () => knownDetails(props.codebook, fragment().details);
  const choose = (id: string, answer: string) => {
    props.state.change({ details: withEntry(chosen(), id, answer) });
  };
  const keepsText = canStashFreeText();
  const leftOut = () => {
    if (props.leftOut?.code === 'characters')
      return t('note:more.characters', { characters: props.leftOut.characters.join(' ') });
    return props.leftOut && t('note:more.tooLong', { most: props.leftOut.most });
  };
  return (
    <section class="card more no-print">
      <h2>{t('note:more.title')}</h2>
      <p>{t('note:more.text')}</p>
      <p class="field">
        <label for="error">{t('note:more.error')}</label>
        <span class="quiet" id="error-hint">
          {t('note:more.errorHint')}
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
        <For each={props.codebook.details}>
          {({ id, answers }) => (
            <p class="field">
              <label for={`detail-${id}`}>{detailName(props.words, 'note', id)}</label>
              <select
                id={`detail-${id}`}
                onChange={({ currentTarget }) => choose(id, currentTarget.value)}
              >
                <option value="">{t('note:more.unanswered')}</option>
                <For each={answers}>
                  {(answer) => (
                    <option value={answer} selected={chosen()[id] === answer}>
                      {detailAnswer(props.words, 'note', id, answer)}
                    </option>
                  )}
                </For>
              </select>
            </p>
          )}
        </For>
      </div>
      <h3>{t('note:more.longTitle')}</h3>
      <p class="quiet">
        {t('note:more.longText')} {t(keepsText ? 'note:more.inTab' : 'note:more.inAddress')}
      </p>
      <p class="field">
        <label for="model">{t('note:more.model')}</label>
        <span class="quiet" id="model-hint">
          {t('note:more.modelHint')}
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
        <label for="remark">{t('note:more.remark')}</label>
        <span class="quiet" id="remark-hint">
          {t('note:more.remarkHint', { most: MOST.remark })}
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
