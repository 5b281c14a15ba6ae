import { For, Show } from 'solid-js';
import { detailAnswer, detailName } from '../shared/content-words.ts';
import { withEntry } from '../shared/entry.ts';
import { knownDetails } from '../note/code.ts';
import { ErrorText } from './ErrorText.tsx';
import { Key } from './Key.tsx';
import { letters } from './keys.ts';
import { deskNodeOf } from './nodes.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** The display's text and the optional details; both go into the code. */
export function DetailsCard(props: DeskProps) {
  const t = sayer(props);
  const chosen = () => knownDetails(props.page.codebook, props.desk.address.fragment().details);
  const choose = (id: string, answer: string) => {
    props.desk.address.note({ details: withEntry(chosen(), id, answer) });
  };
  // On a step that asks for it the field stands there instead.
  const elsewhere = () =>
    props.desk.journey.view().kind === 'at' &&
    deskNodeOf(props.page, props.desk.journey.node()).takesError;
  return (
    <section class="panel details">
      <h2 id="desk-details" tabindex="-1">
        {t('desk:details.title')} <Key of={letters.details} />
      </h2>
      <p class="quiet">{t('desk:details.text')}</p>
      <Show when={!elsewhere()}>
        <ErrorText {...props} />
      </Show>
      <div class="fields">
        <For each={props.page.codebook.details}>
          {({ id, answers }) => (
            <p class="field">
              <label for={`desk-detail-${id}`}>{detailName(props.page.words, 'note', id)}</label>
              <select
                id={`desk-detail-${id}`}
                onChange={({ currentTarget }) => choose(id, currentTarget.value)}
              >
                <Show when={props.desk.told()[id] === undefined}>
                  <option value="">{t('desk:details.unanswered')}</option>
                </Show>
                <For each={answers}>
                  {(answer) => (
                    <option value={answer} selected={chosen()[id] === answer}>
                      {detailAnswer(props.page.words, 'note', id, answer)}
                    </option>
                  )}
                </For>
              </select>
            </p>
          )}
        </For>
      </div>
    </section>
  );
}
