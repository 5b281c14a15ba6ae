import { For, Show, createMemo, createSignal, type JSX } from 'solid-js';
import type { Assessed } from '../../visit/assess.ts';
import { loadRound, type PartLoad } from '../../route/load.ts';
import { sayer } from '../shared/words.ts';
import { name, percent } from '../preview/facts.ts';
import { asPreview } from '../preview/sentences.ts';
import type { RoundProps } from './props.ts';

/** What to put on the van for the whole round, beside one of each likely part a visit. */
export function Load(
  props: RoundProps & {
    readonly figures: readonly Assessed[];
    /** The chance that is to be enough, and what sets it: files are of the same chance. */
    readonly chance: number;
    readonly slider: () => Element;
  },
): JSX.Element {
  const t = sayer(props);
  const words = () => asPreview(props.page.words);
  const [way, setWay] = createSignal<'alone' | 'together'>('alone');
  const load = createMemo(() => loadRound(props.figures, props.chance));
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
      <h2>{t('load.title')}</h2>
      <label for="chance">{t('load.chance')}</label>
      {props.slider()}
      <fieldset>
        <legend>{t('load.way')}</legend>
        <For each={['alone', 'together'] as const}>
          {(one) => (
            <label class="tick">
              <input type="radio" name="way" checked={way() === one} onChange={() => setWay(one)} />
              {t(one === 'alone' ? 'load.one' : 'load.all')}
            </label>
          )}
        </For>
      </fieldset>
      <Show when={load().parts.length > 0} fallback={<p>{t('load.none')}</p>}>
        <table>
          <caption>{t('load.caption')}</caption>
          <thead>
            <tr>
              <For each={['part', 'mean', 'count', 'habit'] as const}>
                {(head) => <th scope="col">{t(`load.${head}`)}</th>}
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
              <th scope="row">{t('load.sum')}</th>
              <td />
              <td class="strong">{number(load()[way()].pieces)}</td>
              <td>{number(load().habit.pieces)}</td>
            </tr>
          </tfoot>
        </table>
        <p>
          {t(`load.${way()}Note`, {
            chance: percent(words(), props.chance),
            bound: bound(way()),
          })}
        </p>
        <p>{t('load.habitNote', { pieces: load().habit.pieces, bound: bound('habit') })}</p>
      </Show>
      <p class="quiet">
        {t('diagnosis:source')} {t('load.assumes')}
      </p>
    </section>
  );
}
