/** In a world where answers hang together and some faults are on no list: shares mean what they say. */
import { describe, expect, it } from 'vitest';
import { details, guides, models } from '../../../src/content/load.ts';
import { shares } from '../../../src/diagnosis/posterior.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import { simulate } from './support/simulate.ts';

const SEED = 2;
const EACH = 300;
const BANDS = 10;

const visits = guides().flatMap((guide) => {
  const model = models()[guide.id];
  const complaints = model?.evidence.find(({ key }) => key === 'complaint')?.answers;
  if (!model || !complaints?.includes(guide.id)) return [];
  const world = { guide, details: details(), truth: model };
  return simulate(world, EACH, seeded(SEED)).map(({ fault, evidence }) => {
    const now = shares(model, evidence);
    const claimed = Math.max(...now);
    const first = now.indexOf(claimed);
    return { evidence, claimed, right: first === fault, first: String(model.faults[first]?.id) };
  });
});

describe(`${visits.length} visits (seed ${SEED})`, () => {
  it('have a first guess that is right as often as it claims, in every band', () => {
    let looked = 0;
    for (let band = 0; band < BANDS; band++) {
      const own = visits.filter(({ claimed }) => Math.floor(claimed * BANDS) === band);
      if (own.length < 0.02 * visits.length) continue;
      const claimed = own.reduce((sum, one) => sum + one.claimed, 0) / own.length;
      const right = own.filter((one) => one.right).length / own.length;
      const error = Math.sqrt((claimed * (1 - claimed)) / own.length);
      // Three points, and what chance alone does to so few.
      expect(Math.abs(right - claimed), `band ${band}`).toBeLessThan(0.03 + 2 * error);
      looked++;
    }
    expect(looked).toBeGreaterThan(6);
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
