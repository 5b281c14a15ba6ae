import { For, type JSX } from 'solid-js';
import type { HeldOut } from '../../diagnosis/score.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';

/** Units of the drawing: a square of shares, with room for its figures. */
const SIDE = 240;
const LEFT = 44;
const TOP = 10;
const x = (share: number): number => LEFT + share * SIDE;
const y = (share: number): number => TOP + (1 - share) * SIDE;

/** How far to trust a share: what was said of the first guess, and how often it was right. */
export function Reliability(props: {
  readonly page: Page;
  readonly heldOut: HeldOut;
}): JSX.Element {
  const t = sayer(props);
  const bands = () => props.heldOut.after.reliability;
  const percent = (share: number) =>
    new Intl.NumberFormat(props.page.words.language, { style: 'percent' }).format(share);
  return (
    <section class="card reliability">
      <h2>{t('learn:plot.title')}</h2>
      <p>{t('learn:plot.text')}</p>
      <svg
        viewBox={`0 0 ${String(LEFT + SIDE + 24)} ${String(TOP + SIDE + 40)}`}
        aria-hidden="true"
      >
        <For each={[0, 0.5, 1]}>
          {(share) => (
            <>
              <path class="grid" d={`M${x(share)} ${y(0)}V${y(1)}M${x(0)} ${y(share)}H${x(1)}`} />
              <text x={x(share)} y={y(0) + 16} text-anchor="middle">
                {percent(share)}
              </text>
              <text x={LEFT - 5} y={y(share) + 4} text-anchor="end">
                {percent(share)}
              </text>
            </>
          )}
        </For>
        <text x={x(0.5)} y={y(0) + 34} text-anchor="middle">
          {t('learn:plot.said')}
        </text>
        <path class="even" d={`M${x(0)} ${y(0)}L${x(1)} ${y(1)}`} />
        <For each={bands()}>
          {({ claimed, right, visits, interval }) => (
            <>
              <path class="bar" d={`M${x(claimed)} ${y(interval.low)}V${y(interval.high)}`} />
              <circle cx={x(claimed)} cy={y(right / visits)} r="5" />
            </>
          )}
        </For>
      </svg>
      <table>
        <thead>
          <tr>
            <th scope="col">{t('learn:plot.said')}</th>
            <th scope="col">{t('learn:plot.right')}</th>
            <th scope="col">{t('learn:plot.range')}</th>
          </tr>
        </thead>
        <tbody>
          <For each={bands()}>
            {({ claimed, right, visits, interval }) => (
              <tr>
                <th scope="row">{percent(claimed)}</th>
                <td>{t('learn:plot.of', { right, visits })}</td>
                <td>{`${percent(interval.low)}–${percent(interval.high)}`}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}
