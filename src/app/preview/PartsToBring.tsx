import { For, Show, createMemo, type JSX } from 'solid-js';
import { bestLoad, loadFor } from '../../diagnosis/parts.ts';
import { Bar } from './Bar.tsx';
import { createChance } from './Chance.tsx';
import { name, names } from '../shared/staff-words.ts';
import { percent } from './facts.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';
import type { DiagnosisState } from './visit.ts';

interface Props {
  readonly page: Page;
  readonly visit: DiagnosisState;
}

/** Loads of so many parts are compared. */
const SIZES = [0, 1, 2, 3] as const;

/** What to put on the van: parts for a chosen chance, skills and tools. */
export function PartsToBring(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const [chance, Slider] = createChance(words);
  const load = createMemo(() => loadFor(props.visit.model, props.visit.shares(), chance() / 100));
  const sizes = createMemo(() =>
    SIZES.map((size) => bestLoad(props.visit.model, props.visit.shares(), size)).filter(
      ({ parts }, index) => parts.length === index,
    ),
  );
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
        <label for="chance">{t('preview:load.chance')}</label>
        <Slider />
        <ul class="parts">
          <For each={load().parts} fallback={<li>{t('preview:load.noParts')}</li>}>
            {(part) => <li>{name(words(), 'parts', part)}</li>}
          </For>
        </ul>
        <p class="strong">
          {t('preview:load.reaches', { share: percent(words(), load().chance) })}
        </p>
        <details>
          <summary>{t('preview:load.sizes')}</summary>
          <dl>
            <For each={sizes()}>
              {({ parts, chance: reached }, index) => (
                <div>
                  <dt>
                    {index() === 0 ? t('preview:load.noParts') : names(words(), 'parts', parts)}
                  </dt>
                  <dd>
                    <Bar part={reached} />
                    {percent(words(), reached)}
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
