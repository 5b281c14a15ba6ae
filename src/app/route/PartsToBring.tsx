import { For, Show, createMemo, createSignal, type JSX } from 'solid-js';
import type { Assessed } from '../../visit/assess.ts';
import { partsToBring, type PartLoad } from '../../route/parts-to-bring.ts';
import { sayer } from '../shared/words.ts';
import { chosenPercent } from '../preview/facts.ts';
import { name } from '../shared/staff-words.ts';
import type { RouteProps } from './props.ts';

/** What to put on the van for the whole route, beside one of each likely part a visit. */
export function PartsToBring(
  props: RouteProps & {
    readonly figures: readonly Assessed[];
    /** The chance that is to be enough, and what sets it: files are of the same chance. */
    readonly chance: number;
    readonly slider: () => Element;
  },
): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const [way, setWay] = createSignal<'alone' | 'together'>('alone');
  const load = createMemo(() => partsToBring(props.figures, props.chance));
  const number = (value: number, digits = 0) =>
    new Intl.NumberFormat(props.page.words.language, {
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
    }).format(value);
  // Rounded down: what stands there is a bound, "so much or more".
  const bound = (of: 'alone' | 'together' | 'habit') =>
    new Intl.NumberFormat(words().language, { style: 'percent' }).format(
      Math.floor(load()[of].chanceAtLeast * 100) / 100,
    );
  return (
    <section class="card load">
      <h2>{t('round:load.title')}</h2>
      <label for="chance">{t('round:load.chance')}</label>
      {props.slider()}
      <fieldset>
        <legend>{t('round:load.way')}</legend>
        <For each={['alone', 'together'] as const}>
          {(one) => (
            <label class="tick">
              <input type="radio" name="way" checked={way() === one} onChange={() => setWay(one)} />
              {t(one === 'alone' ? 'round:load.one' : 'round:load.all')}
            </label>
          )}
        </For>
      </fieldset>
      <Show when={load().parts.length > 0} fallback={<p>{t('round:load.none')}</p>}>
        <table>
          <caption>{t('round:load.caption')}</caption>
          <thead>
            <tr>
              <For each={['part', 'mean', 'count', 'habit'] as const}>
                {(head) => <th scope="col">{t(`round:load.${head}`)}</th>}
              </For>
            </tr>
          </thead>
          <tbody>
            <For each={load().parts}>
              {(row: PartLoad) => (
                <tr>
                  <th scope="row">{name(props.page.words, 'parts', row.part)}</th>
                  <td>{number(row.mean, 1)}</td>
                  <td class="strong">{number(row[way()])}</td>
                  <td>{number(row.habit)}</td>
                </tr>
              )}
            </For>
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">{t('round:load.sum')}</th>
              <td />
              <td class="strong">{number(load()[way()].pieces)}</td>
              <td>{number(load().habit.pieces)}</td>
            </tr>
          </tfoot>
        </table>
        <p>
          {t(`round:load.${way()}Note`, {
            chance: chosenPercent(words(), props.chance),
            bound: bound(way()),
          })}
        </p>
        <p>{t('round:load.habitNote', { pieces: load().habit.pieces, bound: bound('habit') })}</p>
      </Show>
      <p class="quiet">
        {t('diagnosis:source')} {t('round:load.assumes')}
      </p>
    </section>
  );
}
