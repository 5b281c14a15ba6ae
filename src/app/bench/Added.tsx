import { Show, type JSX } from 'solid-js';
import type { Words } from '../shared/words.ts';
import type { Entries } from './entries.ts';
import { difference, ohms, temperature } from './figures.ts';
import type { Judged } from './judge.ts';

/** What resistance in the wires does to what the control believes. */
export function Added(props: {
  readonly words: Words;
  readonly entries: Entries;
  readonly judged: Judged;
}): JSX.Element {
  const t: Words['t'] = (key, facts) => props.words.t(key, facts);
  const told = () => {
    const { added, expected } = props.judged;
    if (!added || !expected) return props.entries.added === '' ? '' : t('bench:added.needsAt');
    const { unit } = props.entries;
    const facts = {
      at: temperature(props.words, expected.celsius, unit),
      ohms: ohms(props.words, added.ohms),
    };
    if (added.believed === undefined) return t('bench:added.open', facts);
    return t('bench:added.believes', {
      ...facts,
      believed: temperature(props.words, added.believed, unit),
      off: difference(props.words, added.believed - expected.celsius, unit),
    });
  };
  /** A reading above what it should be may be a good sensor behind a poor plug. */
  const surplus = () => {
    const { finding, believed } = props.judged;
    return finding && believed !== undefined && finding.offOhms > 0 && finding.verdict === 'drifted'
      ? t('bench:added.surplus', { ohms: ohms(props.words, finding.offOhms) })
      : '';
  };
  return (
    <div aria-live="polite">
      <Show when={told() !== '' && !props.judged.problems.added}>
        <p class="told strong">{told()}</p>
      </Show>
      <Show when={surplus() !== ''}>
        <p>{surplus()}</p>
      </Show>
    </div>
  );
}
