import { For, Show, createMemo, type JSX } from 'solid-js';
import { worthAsking } from '../../diagnosis/ask.ts';
import { detailName } from '../shared/content-words.ts';
import { name, names } from '../shared/staff-words.ts';
import { sayer } from '../shared/words.ts';
import { odds } from './odds.ts';
import type { Page } from './page.ts';
import type { DiagnosisState } from './visit.ts';

interface Props {
  readonly page: Page;
  readonly visit: DiagnosisState;
  /** It came with the code in the long form. */
  readonly modelNumber: string | undefined;
}

/** Tools or skills in the order in which the checks ask for them. */
export function needed(visit: DiagnosisState, kind: 'tools' | 'skills'): string[] {
  const steps = visit.plan().best.steps;
  const of = (id: string) => visit.model.checks.find((check) => check.id === id)?.[kind] ?? [];
  return [...new Set(steps.flatMap(({ check }) => of(check)))];
}

const DETAIL = /^detail\./;

/** What to put on the van, and the one thing to ask before: the detail that would tell most. */
export function Load(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const parts = () => props.visit.load().parts;
  const asked = createMemo(() =>
    props.visit.taps().length > 0
      ? undefined
      : worthAsking(props.visit.model, props.visit.evidence(), 1)[0],
  );
  return (
    <section class="card load">
      <h2>{t('preview:load.title')}</h2>
      <ul class="parts">
        <For each={parts()} fallback={<li>{t('preview:load.noParts')}</li>}>
          {(part) => <li>{name(words(), 'parts', part)}</li>}
        </For>
        <Show when={props.modelNumber === undefined && parts().length > 0}>
          <li class="call">{t('preview:load.callModel')}</li>
        </Show>
      </ul>
      <Show when={asked()}>
        {(one) => (
          <>
            <h2>{t('preview:ask')}</h2>
            <p class="ask">{detailName(words(), 'note', one().key.replace(DETAIL, ''))}</p>
          </>
        )}
      </Show>
    </section>
  );
}

/** What else to take along for the checks, and what the parts are good for. */
export function Kit(props: Pick<Props, 'page' | 'visit'>): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  return (
    <details class="card kit">
      <summary>
        <h2>{t('preview:load.more')}</h2>
      </summary>
      <dl>
        <For each={['tools', 'skills'] as const}>
          {(kind) => (
            <div>
              <dt>{t(`preview:plan.${kind}`)}</dt>
              <dd>{names(words(), kind, needed(props.visit, kind)) || t('preview:plan.none')}</dd>
            </div>
          )}
        </For>
      </dl>
      <p>{t('preview:load.reaches', { odds: odds(words(), props.visit.load().chance) })}</p>
    </details>
  );
}
