import { For, Show, createMemo, type JSX } from 'solid-js';
import { worthAsking } from '../../diagnosis/ask.ts';
import { detailName } from '../shared/content-words.ts';
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

/** The optional details that were not given and would tell most of this visit. */
export function AskFirst(props: Props): JSX.Element {
  const t = sayer(props);
  const asked = createMemo(() => worthAsking(props.visit.model, props.visit.evidence(), MOST));
  return (
    <Show when={props.visit.taps().length === 0 && asked().length > 0}>
      <section class="card">
        <h2>{t('preview:ask.title')}</h2>
        <p>{t('preview:ask.lead')}</p>
        <ul>
          <For each={asked()}>
            {({ key }) => <li>{detailName(props.page.words, 'preview', key.replace(KEY, ''))}</li>}
          </For>
        </ul>
      </section>
    </Show>
  );
}
