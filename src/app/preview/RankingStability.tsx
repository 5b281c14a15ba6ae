import { For, Show, createEffect, createSignal, on, onCleanup, type JSX } from 'solid-js';
import type { Stability } from '../../diagnosis/stability.ts';
import type { Evidence } from '../../diagnosis/types.ts';
import { Bar } from './Bar.tsx';
import { name } from '../shared/staff-words.ts';
import { breathe } from '../shared/breathe.ts';
import { percent } from './facts.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';
import type { DiagnosisState } from './visit.ts';

interface Props {
  readonly page: Page;
  readonly visit: DiagnosisState;
}

/** By how much each figure may be wrong, up or down. */
const FACTOR = 2;
const DRAWS = 300;
/** Faults whose ranges are shown. */
const MOST_SHOWN = 5;

/** How stable the ranking is, drawn in pieces after the page stands. */
export function RankingStability(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const [stability, setStability] = createSignal<Stability>();
  const draw = async (evidence: Evidence, over: AbortSignal): Promise<void> => {
    const { stabilityInPieces } = await import('../../diagnosis/stability.ts');
    const options = { factor: FACTOR, draws: DRAWS };
    const pieces = stabilityInPieces(props.visit.model, evidence, options);
    while (!over.aborted) {
      const { done, value } = pieces.next();
      if (done) {
        setStability(value);
        return;
      }
      await breathe();
    }
  };
  createEffect(
    on(
      () => props.visit.evidence(),
      (evidence) => {
        const life = new AbortController();
        onCleanup(() => life.abort());
        setStability(undefined);
        // Not there (no network, a new release): the ranking stands without it.
        draw(evidence, life.signal).catch(() => undefined);
      },
    ),
  );
  const ranges = ({ ranges: all }: Stability) =>
    props.visit
      .ranking()
      .slice(0, MOST_SHOWN)
      .flatMap(({ fault }) => all.filter((one) => one.fault === fault));
  return (
    <div class="card firm">
      <h3>{t('preview:firm.title')}</h3>
      <Show when={stability()} fallback={<p class="quiet">{t('preview:firm.drawing')}</p>}>
        {(now) => (
          <>
            <p>
              <strong>{t(`preview:firm.degree.${now().degree}`)}</strong>{' '}
              {t('preview:firm.stays', {
                share: percent(words(), now().firstStays),
                draws: now().draws,
                factor: FACTOR,
              })}{' '}
              <Show when={now().restsOn && now().degree !== 'shaky'}>
                {t('preview:firm.restsOn')}
              </Show>
            </p>
            <details>
              <summary>{t('preview:firm.ranges')}</summary>
              <dl>
                <For each={ranges(now())}>
                  {({ fault, low, high }) => (
                    <div>
                      <dt>{name(words(), 'faults', fault)}</dt>
                      <dd>
                        <Bar from={low} part={high - low} />
                        {t('preview:firm.range', {
                          low: percent(words(), low),
                          high: percent(words(), high),
                        })}
                      </dd>
                    </div>
                  )}
                </For>
              </dl>
              <p class="quiet">{t('preview:firm.note')}</p>
            </details>
          </>
        )}
      </Show>
    </div>
  );
}
