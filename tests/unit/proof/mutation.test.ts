import { describe, expect, it } from 'vitest';
import { guides } from '../../../src/content/load.ts';
import { mutationScores } from '../../../src/cli/mutation.ts';
import { mutationLine } from '../../../src/cli/proof-report.ts';
import { meaningOf } from '../../support/mutate/meaning.ts';
import { doorLocked } from '../guide/support/meaning.ts';
import { realGuide } from '../guide/support/real.ts';

/** `npm run prove -- --mutants` judges more of them. */
const OF_A_KIND = 40;

describe('slips in any published guide', () => {
  it('are judged by the meaning a guide gives itself, which for one is as told by hand', () => {
    expect(meaningOf(realGuide())).toEqual(doorLocked);
  });

  it.each(guides().map(({ id }) => id))('are all caught when unsafe: %s', (id) => {
    const [one, ...others] = mutationScores(OF_A_KIND, id);
    if (!one) throw new Error(`${id} does not load`);
    expect(others).toEqual([]);
    const { guide, score } = one;
    process.stdout.write(`\n${guide}: ${mutationLine(score)}\n`);
    expect(score.missed).toEqual([]);
    // Fewest in guides that never send anybody to the breaker.
    expect(score.unsafe).toBeGreaterThan(10);
  });
});
