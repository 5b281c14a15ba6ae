import { describe, expect, test } from 'vitest';
import { timeToReach } from '../../../src/physics/cooldown.ts';

/**
 * OpenStax, Calculus Volume 1, section 6.8 (exponential growth and decay): the worked
 * example and the exercises on Newton's law of cooling. °F and minutes. `book` is the
 * printed answer, which rounds k on the way; `exact` is the same case unrounded.
 */
const cases = [
  {
    what: 'coffee',
    from: 200,
    then: 180,
    after: 2,
    room: 70,
    target: 175,
    book: 2.56,
    exact: 2.55695,
  },
  {
    what: 'coffee',
    from: 200,
    then: 180,
    after: 2,
    room: 70,
    target: 155,
    book: 5.09,
    exact: 5.08677,
  },
  {
    what: 'coffee',
    from: 200,
    then: 185,
    after: 2,
    room: 75,
    target: 175,
    book: 3.5,
    exact: 3.49116,
  },
  {
    what: 'coffee',
    from: 200,
    then: 185,
    after: 2,
    room: 75,
    target: 155,
    book: 7,
    exact: 6.98233,
  },
  {
    what: 'pizza',
    from: 200,
    then: 190,
    after: 1,
    room: 75,
    target: 150,
    book: 6.12,
    exact: 6.12636,
  },
  { what: 'cake', from: 450, then: 330, after: 10, room: 70, target: 75, book: 114, exact: 114.12 },
  {
    what: 'turkey',
    from: 165,
    then: 145,
    after: 30,
    room: 75,
    target: 110,
    book: 113,
    exact: 112.743,
  },
] as const;

describe('Newton cooling against OpenStax Calculus', () => {
  test.each(cases)('$what to $target °F in $book min', (c) => {
    // The book's k, found from the first two readings as it does: e^(−k·after) = then / from.
    const tau = c.after / Math.log((c.from - c.room) / (c.then - c.room));
    const time = timeToReach({ from: c.from, room: c.room, target: c.target, tau });
    if (!time.ok) throw new Error(time.error.code);
    const digits = String(c.exact).split('.')[1]?.length ?? 0;
    expect(Math.abs(time.value - c.exact)).toBeLessThanOrEqual(0.5 * 10 ** -digits);
    // The book's rounding of k moves its answers by up to 0.3 %.
    expect(Math.abs(time.value - c.book) / c.book).toBeLessThan(0.003);
  });
});
