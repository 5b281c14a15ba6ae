import { countTaken, damages } from '../unit/fuzz/damage.ts';
import { fuzz } from '../unit/fuzz/engine.ts';
import { targets } from '../unit/fuzz/targets.ts';
import type { Row } from './row.ts';

const INPUTS = 10_000_000;
/** What the readers of text leave; each kind of damage takes an equal part. */
const DAMAGED = 0.4;
const SEED = 7;
/** Longer than this and a reader would be said to hang. */
const HANGS_MS = 50;

/** Processor time of some work, seconds: other work on the machine does not count. */
function timed<T>(work: () => T): { readonly value: T; readonly seconds: number } {
  const from = process.cpuUsage();
  const value = work();
  const { user, system } = process.cpuUsage(from);
  return { value, seconds: (user + system) / 1e6 };
}

/**
 * 10,000,000 inputs: readers of foreign text keep to what they promise, none hangs, and damaged
 * codes are taken for others no oftener than the mathematics gives. A broken promise ends the run.
 */
export function benchFuzz(): Promise<Row[]> {
  const rows = targets.flatMap(([target, share]): Row[] => {
    const inputs = Math.round(INPUTS * share);
    const { value, seconds } = timed(() => fuzz(target, inputs, SEED));
    const note = `${inputs.toLocaleString('en-US')} inputs, ${String(value.answers.size)} ways to answer`;
    return [
      { name: `fuzz ${target.name}: speed`, value: inputs / seconds, unit: '/s', note },
      {
        name: `fuzz ${target.name}: slowest input`,
        value: value.slowest,
        unit: 'ms',
        ceiling: HANGS_MS,
      },
    ];
  });
  const taken = damages.map((damage): Row => {
    const inputs = Math.round((INPUTS * DAMAGED) / damages.length);
    const { value } = timed(() => countTaken(damage, inputs, SEED));
    return {
      name: `taken for another code: ${damage.name}`,
      value: value.taken,
      unit: '',
      ceiling: value.most,
      note: `of ${inputs.toLocaleString('en-US')}; the mathematics: at most ${(inputs * damage.bound).toFixed(1)} on average`,
    };
  });
  return Promise.resolve([...rows, ...taken]);
}
