import { For, Show, type JSX } from 'solid-js';
import { name, names } from '../shared/staff-words.ts';
import { sayer } from '../shared/words.ts';
import { odds } from './facts.ts';
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

/** What to put on the van. */
export function Load(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const parts = () => props.visit.load().parts;
  return (
    <section class="card load">
      <h2>{t('preview:load.title')}</h2>
      <ul class="parts">
        <For each={parts()} fallback={<li>{t('preview:load.noParts')}</li>}>
          {(part) => <li>{name(words(), 'parts', part)}</li>}
        </For>
      </ul>
      <Show when={props.modelNumber === undefined && parts().length > 0}>
        <p class="strong call">{t('preview:load.callModel')}</p>
      </Show>
      <details>
        <summary>{t('preview:load.more')}</summary>
        <p>{t('preview:load.reaches', { odds: odds(words(), props.visit.load().chance) })}</p>
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
      </details>
    </section>
  );
}
