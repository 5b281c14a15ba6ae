import { For, Show, createMemo, type JSX } from 'solid-js';
import { worthAsking, type Change } from '../../diagnosis/ask.ts';
import { detailAnswer, detailName } from '../shared/content-words.ts';
import { names } from '../shared/staff-words.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';
import type { DiagnosisState } from './visit.ts';

interface Props {
  readonly page: Page;
  readonly visit: DiagnosisState;
}

/** Questions that are worth a call. */
const MOST = 2;
const KEY = /^detail\./;

/** The optional details that were not given and whose answer would change what to load, and how. */
export function AskFirst(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const asked = createMemo(() => worthAsking(props.visit.model, props.visit.evidence(), MOST));
  const changed = ({ more, fewer }: Change) =>
    [
      more.length > 0 ? t('preview:ask.more', { parts: names(words(), 'parts', more) }) : '',
      fewer.length > 0 ? t('preview:ask.fewer', { parts: names(words(), 'parts', fewer) }) : '',
    ].join(' ');
  return (
    <Show when={props.visit.taps().length === 0 && asked().length > 0}>
      <section class="card ask-first">
        <h2>{t('preview:ask.title')}</h2>
        <ul>
          <For each={asked()}>
            {({ key, changes }) => (
              <li>
                {detailName(words(), 'preview', key.replace(KEY, ''))}
                <ul>
                  <For each={changes}>
                    {(change) => (
                      <li>
                        {detailAnswer(words(), 'preview', key.replace(KEY, ''), change.answer)}:{' '}
                        {changed(change)}
                      </li>
                    )}
                  </For>
                </ul>
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
}
