import { For, Show, type JSX } from 'solid-js';
import type { SensorFinding } from '../../physics/sensor-verdict.ts';
import type { Words } from '../shared/words.ts';
import type { Entries } from './entries.ts';
import { difference, number, ohms, temperature } from './figures.ts';
import type { Band, Judged } from './judge.ts';

interface Props {
  readonly words: Words;
  readonly entries: Entries;
  readonly judged: Judged;
}

/** The verdict where both are known, and every figure that can be told. */
export function Finding(props: Props): JSX.Element {
  const t: Words['t'] = (key, facts) => props.words.t(key, facts);
  return (
    <>
      <Show
        when={props.judged.finding}
        fallback={
          <p class="quiet">{t(props.judged.expected ? 'bench:needsOhms' : 'bench:needsAt')}</p>
        }
      >
        {(finding) => <Verdict words={props.words} finding={finding()} />}
      </Show>
      <dl>
        <For each={rows(props)}>
          {([label, text]) => (
            <div>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          )}
        </For>
      </dl>
    </>
  );
}

function Verdict(props: { readonly words: Words; readonly finding: SensorFinding }): JSX.Element {
  const t: Words['t'] = (key, facts) => props.words.t(key, facts);
  const verdict = () => props.finding.verdict;
  const detail = () => {
    const { verdict, withinClassB, offOhms, other } = props.finding;
    if (verdict === 'fits')
      return [
        t(withinClassB ? 'bench:verdict.fits.classB' : 'bench:verdict.fits.trade'),
        t('bench:verdict.fits.next'),
      ].join(' ');
    if (verdict === 'drifted')
      return t(offOhms > 0 ? 'bench:verdict.drifted.high' : 'bench:verdict.drifted.low');
    if (verdict !== 'other-kind') return t(`bench:verdict.${verdict}.next`);
    const { r0 = 0, slope = 0 } = other ?? {};
    return t('bench:verdict.other-kind.next', { r0, slope });
  };
  return (
    <div class="verdict" data-verdict={verdict()}>
      <p class="word">{t(`bench:verdict.${verdict()}.word`)}</p>
      <p>{detail()}</p>
    </div>
  );
}

/** Labels and figures, top to bottom. */
function rows({ words, entries, judged }: Props): readonly (readonly [string, string])[] {
  const { unit } = entries;
  const { expected, finding, believed, twin } = judged;
  const list: [string, string][] = [];
  if (judged.ohms !== undefined)
    list.push([
      words.t('bench:rows.believed'),
      believed === undefined ? words.t('bench:rows.offCurve') : temperature(words, believed, unit),
    ]);
  if (expected) {
    const at = temperature(words, expected.celsius, unit);
    list.push([words.t('bench:rows.expected', { at }), ohms(words, expected.ohms)]);
    if (twin)
      list.push([
        words.t('bench:rows.twin', { slope: twin.sensor.slope }),
        [
          ohms(words, twin.ohms),
          ...(twin.verdict ? [words.t(`bench:verdict.${twin.verdict}.word`)] : []),
        ].join(': '),
      ]);
  }
  if (finding && Number.isFinite(finding.offOhms)) {
    const off = ohms(words, finding.offOhms, true);
    const { offCelsius } = finding;
    list.push([
      words.t('bench:rows.off'),
      offCelsius === undefined
        ? off
        : words.t('bench:rows.offBy', { ohms: off, degrees: difference(words, offCelsius, unit) }),
    ]);
  }
  if (expected) {
    const band = ({ celsius, low, high }: Band) =>
      words.t('bench:rows.band', {
        degrees: difference(words, celsius, unit, false),
        low: number(words, low),
        high: number(words, high),
      });
    if (expected.classB) list.push([words.t('bench:rows.classB'), band(expected.classB)]);
    list.push([words.t('bench:rows.trade'), band(expected.trade)]);
  }
  return list;
}
