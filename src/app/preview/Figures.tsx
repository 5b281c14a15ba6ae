import { For, Show, type JSX } from 'solid-js';
import { madeOn } from '../../note/day.ts';
import type { Interval } from '../../physics/oven-miss.ts';
import { differenceInFahrenheit } from '../../physics/temperature.ts';
import { driftOf, type Drift } from '../../visit/drift.ts';
import { name } from '../shared/staff-words.ts';
import { sayer, type Words } from '../shared/words.ts';
import { answered, type DiagnosisProps } from './Faults.tsx';
import { likely } from './work.ts';
import { Pairs } from './Pairs.tsx';
import type { Coded } from './told.ts';
import { minutes, percent, shareWords } from './facts.ts';
import { FACTOR, rangeOf } from './stability.ts';

type Props = Pick<DiagnosisProps, 'page'> &
  Coded & { readonly visit: DiagnosisProps['visit'] | undefined };

/** What the page rests on, for whoever doubts it: shares, weights, trials, times, the sensor, the day. */
export function Figures(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const note = () => props.seen.note;
  return (
    <>
      <Show when={props.visit}>{(visit) => <Diagnosed {...props} visit={visit()} />}</Show>
      <Show when={driftOf(props.page.staffViews, props.seen.steps)}>
        {(drift) => <DriftFound {...props} drift={drift()} />}
      </Show>
      <p>{t('preview:made', madeWords(words(), note().day))}</p>
      <p class="quiet">
        {t('preview:meta', {
          code: props.code,
          guide: note().guide,
          release: note().release,
        })}
      </p>
    </>
  );
}

function Diagnosed(props: DiagnosisProps): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const drawn = () => props.visit.stability();
  const range = (fault: string) => rangeOf(props.visit, fault);
  const decibans = (value: number) =>
    new Intl.NumberFormat(words().language, {
      signDisplay: 'always',
      maximumFractionDigits: 0,
    }).format(value);
  return (
    <>
      <p>{t('diagnosis:source')}</p>
      <p class="firm">
        <Show when={drawn()} fallback={t('preview:firm.drawing')}>
          {(now) => (
            <>
              <strong>{t(`preview:firm.degree.${now().degree}`)}</strong>{' '}
              {t('preview:firm.stays', {
                share: percent(words(), now().firstStays),
                draws: now().draws,
                factor: FACTOR,
              })}{' '}
              <Show when={now().restsOn && now().degree !== 'shaky'}>
                {t('preview:firm.restsOn')}
              </Show>
            </>
          )}
        </Show>
      </p>
      <dl class="shares">
        <For each={likely(props.visit)}>
          {({ fault, share, weights }) => (
            <div>
              <dt>
                {name(words(), 'faults', fault)}: <strong>{shareWords(words(), share)}</strong>{' '}
                <Show when={range(fault)}>
                  {(found) =>
                    t('preview:firm.range', {
                      low: percent(words(), found().low),
                      high: percent(words(), found().high),
                    })
                  }
                </Show>
              </dt>
              <For each={weights.filter((one) => Math.abs(one.decibans) >= 1)}>
                {(weight) => (
                  <dd>
                    {answered(props, weight)} {decibans(weight.decibans)}
                  </dd>
                )}
              </For>
            </div>
          )}
        </For>
      </dl>
      <p class="quiet">{t('preview:ranking.decibans')}</p>
      <Pairs
        rows={[
          [t('preview:plan.expected'), minutes(words(), props.visit.plan().best.expectedMinutes)],
        ]}
      />
      <ul class="quiet">
        <For each={words().list('diagnosis:limits')}>{(line) => <li>{line}</li>}</For>
      </ul>
    </>
  );
}

/** The day a note was made, how long ago, and the other day that its code could mean. */
export function madeWords(words: Words, day: number): Record<'date' | 'ago' | 'earlier', string> {
  // The writer's day is the calendar's; so is the reader's.
  const now = new Date();
  const today = new Date(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()));
  const { latest, earlier } = madeOn(day, today);
  const long = new Intl.DateTimeFormat(words.language, { dateStyle: 'full', timeZone: 'UTC' });
  const days = Math.round((latest.getTime() - today.getTime()) / 86_400_000);
  return {
    date: long.format(latest),
    ago: new Intl.RelativeTimeFormat(words.language, { numeric: 'auto' }).format(days, 'day'),
    earlier: long.format(earlier),
  };
}

/** An interval in words; an end that nobody knows is left open. */
function between(words: Words, { low, high }: Interval, say: (value: number) => string): string {
  if (low === -Infinity && high === Infinity) return words.t('preview:drift.anything');
  if (low === -Infinity) return words.t('preview:drift.atMost', { value: say(high) });
  if (high === Infinity) return words.t('preview:drift.atLeast', { value: say(low) });
  return words.t('preview:drift.between', { low: say(low), high: say(high) });
}

/** What the sensor would be off by, if the owner's readings come from it alone. */
function DriftFound(props: Pick<Props, 'page'> & { readonly drift: Drift }): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  /** Whole units: an answer's band is coarser by far. */
  const signed = (value: number) =>
    new Intl.NumberFormat(words().language, {
      maximumFractionDigits: 0,
      useGrouping: false,
      signDisplay: 'exceptZero',
    }).format(value);
  const degrees = (kelvins: number) =>
    t('preview:drift.degrees', {
      fahrenheit: signed(differenceInFahrenheit(kelvins)),
      celsius: signed(kelvins),
    });
  const ohms = (value: number) => t('preview:drift.inOhms', { value: signed(value) });
  const rows = () =>
    [
      [t('preview:drift.miss'), between(words(), props.drift.miss, degrees)],
      [t('preview:drift.believed'), between(words(), props.drift.kelvins, degrees)],
      [t('preview:drift.ohms', { r0: props.drift.r0 }), between(words(), props.drift.ohms, ohms)],
    ] as const;
  return (
    <div class="drift">
      <h3>{t('preview:drift.title')}</h3>
      <p class="quiet">{t('preview:drift.lead', { count: props.drift.count })}</p>
      <Pairs rows={rows()} />
      <Show when={props.drift.miss.low <= 0 && props.drift.miss.high >= 0}>
        <p class="strong">{t('preview:drift.maySound')}</p>
      </Show>
      <p class="quiet">{t('preview:drift.note')}</p>
    </div>
  );
}
