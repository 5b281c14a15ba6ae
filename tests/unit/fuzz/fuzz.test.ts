// 30,000 inputs in all, 100,000 with EVERY=1; `npm run bench -- fuzz` runs 10,000,000 and measures the
// slowest.
import { expect, test } from 'vitest';
import { cases } from '../../support/sample.ts';
import { countTaken, damages } from './damage.ts';
import { fuzz } from './engine.ts';
import { targets } from './targets.ts';

const INPUTS = cases(30_000, 100_000);
const DAMAGED = 0.4;
const SEED = 20_261_126;

test('the shares are all of the inputs', () => {
  expect(targets.reduce((sum, [, share]) => sum + share, DAMAGED)).toBeCloseTo(1);
});

test.each(targets.map(([target, share]) => [target.name, target, share] as const))(
  'whatever comes, the reader of a %s keeps to what it promises',
  (_, target, share) => {
    const { inputs, answers } = fuzz(target, Math.round(INPUTS * share), SEED);
    expect(inputs).toBeGreaterThanOrEqual(0.01 * INPUTS);
    // It came further than the first check: many ways to answer were met, good ones among them.
    expect(answers.size, [...answers.keys()].join('\n')).toBeGreaterThan(5);
  },
);

test.each(damages.map((damage) => [damage.name, damage] as const))(
  '%s: taken for another code no oftener than the mathematics gives',
  (_, damage) => {
    const { taken, most } = countTaken(damage, (INPUTS * DAMAGED) / damages.length, SEED);
    expect(taken).toBeLessThanOrEqual(most);
  },
);

test('a reader that throws is told with the input that does it', () => {
  const brittle = {
    name: 'brittle',
    seeds: ['abcdef'],
    bits: ['x'],
    longest: 100,
    read: (input: string) => {
      if (input.includes('xx')) throw new Error('two');
      return input.includes('x') ? 'one' : 'none';
    },
  };
  expect(() => fuzz(brittle, 10_000, 1)).toThrow(/brittle, seed 1, input \d+: ".*xx.*"/);
});
