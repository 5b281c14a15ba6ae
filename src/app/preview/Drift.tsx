import { Show, type JSX } from 'solid-js';
import { differenceInFahrenheit } from '../../physics/temperature.ts';
import type { Interval } from '../../physics/oven-miss.ts';
import type { Words } from '../shared/words.ts';
import { sayer } from '../shared/words.ts';
import type { Drift } from '../../visit/drift.ts';
import type { Page } from './page.ts';

/** Whole units: an answer's band is coarser by far. */
function signed(words: Words, value: number): string {
  return new Intl.NumberFormat(words.language, {
    maximumFractionDigits: 0,
    useGrouping: false,
    signDisplay: 'exceptZero',
  }).format(value);
}

/** An interval in words; an end that nobody knows is left open. */
function between(words: Words, { low, high }: Interval, say: (value: number) => string): string {
  if (low === -Infinity && high === Infinity) return words.t('preview:drift.anything');
  if (low === -Infinity) return words.t('preview:drift.atMost', { value: say(high) });
  if (high === Infinity) return words.t('preview:drift.atLeast', { value: say(low) });
  return words.t('preview:drift.between', { low: say(low), high: say(high) });
}

function degrees(words: Words, interval: Interval): string {
  return between(words, interval, (kelvins) =>
    words.t('preview:drift.degrees', {
      fahrenheit: signed(words, differenceInFahrenheit(kelvins)),
      celsius: signed(words, kelvins),
    }),
  );
}

function ohms(words: Words, interval: Interval): string {
  return between(words, interval, (value) =>
    words.t('preview:drift.inOhms', { value: signed(words, value) }),
  );
}

/** What the sensor would be off by, if the owner's readings come from it alone. */
export function DriftCard(props: { readonly page: Page; readonly drift: Drift }): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const maySound = () => props.drift.miss.low <= 0 && props.drift.miss.high >= 0;
  return (
    <section class="card drift">
      <h2>{t('preview:drift.title')}</h2>
      <p class="quiet">{t('preview:drift.lead', { count: props.drift.count })}</p>
      <dl>
        <div>
          <dt>{t('preview:drift.miss')}</dt>
          <dd>{degrees(words(), props.drift.miss)}</dd>
        </div>
        <div>
          <dt>{t('preview:drift.believed')}</dt>
          <dd>{degrees(words(), props.drift.kelvins)}</dd>
        </div>
        <div>
          <dt>{t('preview:drift.ohms', { r0: props.drift.r0 })}</dt>
          <dd>{ohms(words(), props.drift.ohms)}</dd>
        </div>
      </dl>
      <Show when={maySound()}>
        <p class="strong">{t('preview:drift.maySound')}</p>
      </Show>
      <p class="quiet">{t('preview:drift.note')}</p>
      <p>
        <a href="../bench/">{t('preview:drift.bench')}</a>
      </p>
    </section>
  );
}
