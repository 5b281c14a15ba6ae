/** In a world where answers hang together and some faults are on no list: shares mean what they say. */
import { describe, expect, it } from 'vitest';
import { details, guides, models } from '../../../src/content/load.ts';
import { shares } from '../../../src/diagnosis/posterior.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import { reliability } from '../../../src/diagnosis/reliability.ts';
import { simulate } from './support/simulate.ts';
import type { Manner } from './support/simulate.ts';

const SEED = 2;
const EACH = 300;

const visitsOf = (manner: Partial<Manner>) =>
  guides().flatMap((guide) => {
    const model = models()[guide.id];
    const complaints = model?.evidence.find(({ key }) => key === 'complaint')?.answers;
    if (!model || !complaints?.includes(guide.id)) return [];
    const world = { guide, details: details(), truth: model, manner };
    return simulate(world, EACH, seeded(SEED)).map(({ fault, evidence }) => {
      const now = shares(model, evidence);
      const claimed = Math.max(...now);
      const first = now.indexOf(claimed);
      return { evidence, claimed, right: first === fault, first: String(model.faults[first]?.id) };
    });
  });

describe.each([
  // Answers hang together by the hidden facts and by whether a cure was tried, as the model says.
  ['as the model says', {}],
  // And beyond it: every third answer is drawn by one number of the caller's own.
  ['with answers alike', { alike: 1 / 3 }],
])(`visits (seed ${SEED}) %s`, (_, manner) => {
  const visits = visitsOf(manner);

  it('have a first guess that is right as often as it claims, in every band', () => {
    const bands = reliability(visits).filter((one) => one.visits >= 0.02 * visits.length);
    expect(bands.length).toBeGreaterThan(6);
    for (const { from, visits: count, claimed, right } of bands) {
      const error = Math.sqrt((claimed * (1 - claimed)) / count);
      // Three points, and what chance alone does to so few.
      const off = Math.abs(right / count - claimed);
      expect(off, `from ${from}`).toBeLessThan(0.03 + 2 * error);
    }
  });

  it('seldom call an oven not yet cool whose owner waited as told', () => {
    const waited = visits.filter(({ evidence }) =>
      evidence.some(
        ({ key, answer }) => key === 'door-locked/wait' && ['cool', 'overnight'].includes(answer),
      ),
    );
    const wrongly = waited.filter(({ first, right }) => first === 'not-cool' && !right);
    expect(waited.length).toBeGreaterThan(30);
    expect(wrongly.length / waited.length).toBeLessThanOrEqual(0.04);
  });
});
