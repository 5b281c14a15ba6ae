import { For, Show, createMemo, type JSX } from 'solid-js';
import { titleOf } from './facts.ts';
import { percent } from '../preview/facts.ts';
import { name, names } from '../shared/staff-words.ts';
import { sayer } from '../shared/words.ts';
import type { LoadProps } from './props.ts';
import type { Listed } from './state.ts';

/** What to put on the van: a stock that serves every visit, and what one visit alone may need. */
export function PartsToBring(props: LoadProps): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const partsOf = ({ assessed }: Listed) => (assessed && props.load.own.get(assessed)) ?? [];
  /** By visit, so that its line stays one as the day changes. */
  const own = createMemo(() => props.route.visits().filter((visit) => partsOf(visit).length > 0));
  const places = createMemo(
    () => new Map(props.route.visits().map((visit, place) => [visit, place + 1])),
  );
  return (
    <section class="card load">
      <h2>{t('round:load.title')}</h2>
      <Show when={props.load.stock.length > 0}>
        <h3>{t('round:load.stock')}</h3>
        <ul class="stock">
          <For each={props.load.stock}>
            {({ part, count }) => (
              <li>
                {name(words(), 'parts', part)} <strong>× {count}</strong>
              </li>
            )}
          </For>
        </ul>
      </Show>
      <Show when={own().length > 0}>
        <h3>{t('round:load.own')}</h3>
        <ul class="own">
          <For each={own()}>
            {(visit) => (
              <li>
                {places().get(visit)}.{' '}
                <bdi>{titleOf(props.page, visit, props.route.callerOf(visit))}</bdi>
                {': '}
                <span class="strong">{names(words(), 'parts', partsOf(visit))}</span>
                {'. '}
                <Show when={props.route.callerOf(visit).model} fallback={t('round:load.ask')}>
                  {(number) => <bdi>{t('round:load.model', { model: number() })}</bdi>}
                </Show>
              </li>
            )}
          </For>
        </ul>
      </Show>
      <Show when={props.load.stock.length + own().length === 0}>
        <p>{t('round:load.none')}</p>
      </Show>
      <p class="strong">
        {t('round:load.reaches', { share: percent(words(), props.load.chance) })}
      </p>
      <p class="quiet">
        {t('diagnosis:source')} {t('round:load.assumes')}
      </p>
    </section>
  );
}
