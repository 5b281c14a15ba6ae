import { For, Show, type JSX } from 'solid-js';
import { name } from '../shared/staff-words.ts';
import { minutes, money, percent } from './facts.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';
import type { DiagnosisState } from './visit.ts';

interface Props {
  readonly page: Page;
  readonly visit: DiagnosisState;
  readonly modelNumber: string | undefined;
}

/** Parts of which less is needed are not worth a line. */
const LEAST = 0.01;
const HOUR = 60;

/** What to put on the van: the parts that save more than they cost, skills and tools. */
export function PartsToBring(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const load = () => props.visit.load();
  const amount = (value: number) => money(words(), value, props.visit.model.costs.currency);
  const weighed = () => props.visit.weighed();
  const isLoaded = (id: string) => load().parts.some((part) => part === id);
  const loaded = () => weighed().filter(({ part }) => isLoaded(part.id));
  const finding = () => props.visit.plan().best.expectedMinutes;
  /** In the order in which the checks ask for them. */
  const needed = (kind: 'tools' | 'skills') => [
    ...new Set(
      props.visit
        .plan()
        .best.steps.flatMap(
          ({ check }) => props.visit.model.checks.find(({ id }) => id === check)?.[kind] ?? [],
        ),
    ),
  ];
  return (
    <section class="load">
      <h2>{t('preview:load.title')}</h2>
      <div class="card">
        <Show when={!props.modelNumber && loaded().some(({ part }) => part.fits === 'model')}>
          <p class="strong">{t('preview:load.callModel')}</p>
        </Show>
        <ul class="parts">
          <For each={loaded()} fallback={<li>{t('preview:load.noParts')}</li>}>
            {({ part, needed: chance }) => (
              <li>
                {name(words(), 'parts', part.id)}, {percent(words(), chance)}{' '}
                <span class="quiet">{t(`preview:load.fits.${part.fits}`)}</span>
              </li>
            )}
          </For>
        </ul>
        <p class="strong">
          {t('preview:load.reaches', { share: percent(words(), load().chance) })}
        </p>
        <details>
          <summary>{t('preview:load.why')}</summary>
          <p class="quiet">
            {t('preview:load.rule', {
              second: amount(props.visit.model.costs.secondVisit),
              cost: amount(load().cost + (finding() / HOUR) * props.visit.model.costs.hourlyRate),
              minutes: minutes(words(), finding()),
            })}
          </p>
          <dl>
            <For each={weighed().filter((one) => one.needed >= LEAST || isLoaded(one.part.id))}>
              {({ part, saves, costs }) => (
                <div>
                  <dt>{name(words(), 'parts', part.id)}</dt>
                  <dd>
                    {t('preview:load.weighed', { saves: amount(saves), costs: amount(costs) })}
                  </dd>
                </div>
              )}
            </For>
          </dl>
        </details>
        <p class="quiet">{t('preview:load.note')}</p>
      </div>
      <Show when={needed('tools').length > 0}>
        <div class="card">
          <For each={['skills', 'tools'] as const}>
            {(kind) => (
              <>
                <h3>{t(`preview:load.${kind}`)}</h3>
                <ul>
                  <For each={needed(kind)} fallback={<li>{t('preview:plan.none')}</li>}>
                    {(id) => <li>{name(words(), kind, id)}</li>}
                  </For>
                </ul>
              </>
            )}
          </For>
        </div>
      </Show>
    </section>
  );
}
