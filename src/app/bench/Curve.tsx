import { For, Show, createMemo, type JSX } from 'solid-js';
import type { Words } from '../shared/words.ts';
import { sensorOf, type Entries } from './entries.ts';
import { number } from './figures.ts';
import type { Judged } from './judge.ts';
import { plotOf, size } from './plot.ts';

/** The curve with the reading on it; every figure in it stands in words beside. */
export function Curve(props: {
  readonly words: Words;
  readonly entries: Entries;
  readonly judged: Judged;
}): JSX.Element {
  const t: Words['t'] = (key, facts) => props.words.t(key, facts);
  const plot = createMemo(() => {
    const { expected, believed } = props.judged;
    const shown = [expected?.celsius, believed].filter((one) => one !== undefined);
    return plotOf(sensorOf(props.entries.r0), props.entries.unit, shown);
  });
  const frame = () => plot().frame;
  const read = () => {
    const { ohms, expected } = props.judged;
    if (ohms === undefined || !expected) return undefined;
    return plot().place(expected.celsius, ohms);
  };
  const believed = () => {
    const { ohms, believed: celsius } = props.judged;
    return ohms === undefined || celsius === undefined ? undefined : plot().place(celsius, ohms);
  };
  const label = () => t('bench:plot.label', { sensor: t(`bench:r0.${props.entries.r0}`) });
  return (
    <figure class="card curve">
      <svg viewBox={`0 0 ${size.width} ${size.height}`} role="img" aria-label={label()}>
        <For each={plot().y}>
          {({ at, value }) => (
            <>
              <line class="grid" x1={frame().left} x2={frame().right} y1={at} y2={at} />
              <text x={frame().left - 5} y={at + 4} text-anchor="end">
                {number(props.words, value)}
              </text>
            </>
          )}
        </For>
        <For each={plot().x}>
          {({ at, value }) => (
            <>
              <line class="grid" x1={at} x2={at} y1={frame().top} y2={frame().bottom} />
              <text x={at} y={frame().bottom + 15} text-anchor="middle">
                {number(props.words, value)}
              </text>
            </>
          )}
        </For>
        <text x={frame().right} y={frame().bottom + 32} text-anchor="end">
          {t(`bench:unit.${props.entries.unit}`)}
        </text>
        <polygon class="band" points={plot().band} />
        <polyline class="line" points={plot().curve} />
        <Show when={read()}>
          {(place) => (
            <line
              class="way"
              x1={place().x}
              x2={believed()?.x ?? place().x}
              y1={place().y}
              y2={place().y}
            />
          )}
        </Show>
        <Show when={believed()}>
          {(place) => <circle class="believed" cx={place().x} cy={place().y} r="5" />}
        </Show>
        <Show when={read()}>
          {(place) => <circle class="read" cx={place().x} cy={place().y} r="5" />}
        </Show>
      </svg>
      <figcaption class="quiet">{t('bench:plot.caption')}</figcaption>
    </figure>
  );
}
