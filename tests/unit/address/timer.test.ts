import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatTimer, parseTimer, waitOf } from '../../../src/address/timer.ts';
import type { NodeId } from '../../../src/guide/types.ts';

const node = 'wait' as NodeId;
const NOW = 1_795_600_000;
const DAY = 24 * 3600;
const b36 = (seconds: number): string => seconds.toString(36);
/** What a page opened at `NOW` goes on with. */
const read = (text: string, length: number) => waitOf(parseTimer(text), node, length, NOW);

describe('a timer in an address', () => {
  it('comes back, parts of seconds to the long side', () => {
    const text = formatTimer({ node, end: NOW + 600.2, counted: NOW + 10.7 });
    expect(text).toBe(`wait.${b36(NOW + 601)}.${b36(NOW + 10)}`);
    expect(read(text, 900)).toEqual({ end: NOW + 601, counted: NOW + 10 });
  });

  it('is never over before what it has counted: time past its end is not written or read', () => {
    const over = `wait.${b36(NOW)}.${b36(NOW)}`;
    expect(formatTimer({ node, end: NOW, counted: NOW + 5000 })).toBe(over);
    expect(parseTimer(`wait.${b36(NOW)}.${b36(NOW + 5000)}`)).toEqual(parseTimer(over));
  });

  it('has counted nothing where it is of old and names its end only', () => {
    expect(read(`wait.${b36(NOW + 600)}`, 600)).toEqual({ end: NOW + 600, counted: NOW });
  });

  it.each([
    ['another page’s', `cold.${b36(NOW)}`],
    ['none', ''],
    ['no number', 'wait.<b>'],
    ['nothing', 'wait.0'],
    ['negative', 'wait.-5'],
    ['beyond seven digits', 'wait.zzzzzzzz'],
    ['counted by no number', `wait.${b36(NOW)}.x!`],
    ['a time too many', `wait.${b36(NOW)}.${b36(NOW)}.${b36(NOW)}`],
    ['more than a day ahead', `wait.${b36(NOW + 2 * DAY)}.${b36(NOW + DAY + 1)}`],
    ['of old and more than a day ahead', `wait.${b36(NOW + DAY + 601)}`],
  ])('is no wait where it is %s', (_, text) => {
    expect(read(text, 600)).toBeUndefined();
  });

  it('whatever it says, leaves between nothing and the whole wait, and is of about now or before', () => {
    const time = fc.oneof(
      fc.integer({ min: NOW - 2 * DAY, max: NOW + 2 * DAY }).map(b36),
      fc.string({ unit: fc.constantFrom(...'01az.-Z '), maxLength: 9 }),
    );
    let waits = 0;
    fc.assert(
      fc.property(
        fc.array(time, { maxLength: 3 }),
        fc.integer({ min: 0, max: 4 * 3600 }),
        (times, length) => {
          const wait = read(['wait', ...times].join('.'), length);
          if (!wait) return;
          waits += 1;
          expect(wait.end - wait.counted).toBeGreaterThanOrEqual(0);
          expect(wait.end - wait.counted).toBeLessThanOrEqual(length);
          expect(wait.counted).toBeLessThanOrEqual(NOW + DAY);
          // Written again it is the same text: a wait has one spelling.
          const text = formatTimer({ node, ...wait });
          expect(formatTimer({ node, ...(read(text, length) ?? wait) })).toBe(text);
        },
      ),
      { numRuns: 2000, seed: 20261128 },
    );
    expect(waits).toBeGreaterThan(200);
  });
});
