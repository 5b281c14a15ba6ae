/** The drift shown for a note of the published guide. */
import { describe, expect, it } from 'vitest';
import { details, guides, staffViews } from '../../../src/content/load.ts';
import { freeze } from '../../../src/note/freeze.ts';
import { codebookGuide, makeCodebooks } from '../../../src/note/codebook.ts';
import { driftOf } from '../../../src/visit/drift.ts';
import { trace } from '../../../src/journey/trace.ts';
import type { AnswerId } from '../../../src/guide/types.ts';

const [codebook] = makeCodebooks([freeze(guides(), details(), 1, '2026-01-01')]).values();
const guide = codebook && codebookGuide(codebook, 'wrong-temperature');
if (!guide) throw new Error('the guide is gone');
const found = guide;

const UP_TO = 'none too-cool electric slowly waits no-fan overnight clear fine sound'.split(' ');

function drift(rest: string) {
  let node = found.first;
  const journey = [...UP_TO, ...rest.split(' ')].map((answer) => {
    const at = node.id;
    const way = node.byAnswer.get(answer);
    if (!way) throw new Error(`${at} has no ${answer}`);
    node = way.to;
    return { at, answer: answer as AnswerId };
  });
  return driftOf(staffViews(), trace(found, journey).steps);
}

describe('the drift that an owner’s readings imply', () => {
  it('is a sensor that reads high for an oven that runs cool', () => {
    const { count, miss, ohms, kelvins } = drift('at-350 under under under') ?? {};
    expect(count).toBe(3);
    // −50 and −20 °F in kelvins.
    expect(miss?.low).toBeCloseTo(-50 / 1.8, 9);
    expect(miss?.high).toBeCloseTo(-20 / 1.8, 9);
    expect(kelvins?.low).toBeCloseTo(20 / 1.8, 9);
    // Near 350 °F a 1000 Ω sensor rises by about 3.7 Ω a kelvin by the standard's curve, by 3.6 by
    // the other common one: A + 2 B t, with 3.81e-3 and −6.02e-7. Which one it is, the code does not say.
    expect(ohms?.low).toBeCloseTo((20 / 1.8) * 3.604, 0);
    expect(ohms?.high).toBeCloseTo((50 / 1.8) * 3.73, 0);
  });

  it('counts readings that were given only', () => {
    expect(drift('at-400 unsure over close')?.count).toBe(2);
  });

  it('is open where the answers are', () => {
    expect(drift('at-350 far-over over close')?.ohms.low).toBe(-Infinity);
    expect(drift('at-350 far-over over far-under')?.kelvins).toEqual({
      low: -Infinity,
      high: Infinity,
    });
  });

  it('is none without readings', () => {
    expect(drift('none')).toBeUndefined();
    expect(drift('at-350 unsure unsure unsure')).toBeUndefined();
  });
});
