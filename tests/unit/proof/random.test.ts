import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prove } from '../../../src/proof/prove.ts';
import { propertyIds } from '../../../src/proof/property.ts';
import { brokenAlong, oracle } from '../guide/support/oracle.ts';
import { randomGuide } from '../guide/support/random-guide.ts';

const RUNS = 1500;
const SEED = 20261125;
/** `sentences-plain` speaks of words only; see text.test.ts. */
const structural = propertyIds.filter((id) => id !== 'sentences-plain');

describe('the proof, beside every journey spelled out', () => {
  it(`agrees on ${RUNS} random guides, property by property and journey by journey`, () => {
    const tally = new Map<string, { holds: number; fails: number }>(
      structural.map((id) => [id, { holds: 0, fails: 0 }]),
    );
    let loops = 0;
    fc.assert(
      fc.property(randomGuide, (guide) => {
        const proof = prove(guide);
        const opinion = oracle(guide);
        if (opinion.loops) {
          // Round a loop there are endlessly many journeys; the oracle saw those without.
          loops += 1;
          const failing = new Set<string>(
            proof.verdicts.filter(({ holds }) => !holds).map(({ id }) => id),
          );
          expect(failing).toContain('journeys-end');
          for (const id of opinion.broken) expect(failing).toContain(id);
          expect(proof.journeys.all).toBeNull();
          return;
        }
        for (const { id, holds } of proof.verdicts) {
          expect({ id, holds }).toEqual({ id, holds: !opinion.broken.has(id) });
          const counts = tally.get(id);
          if (counts) counts[holds ? 'holds' : 'fails'] += 1;
        }
        const { all, complete, shortest, longest } = proof.journeys;
        expect([Number(all), Number(complete)]).toEqual([opinion.all, opinion.complete]);
        expect([shortest, longest]).toEqual([opinion.shortest, opinion.longest]);
        const concerned = (id: string): number =>
          Number(proof.verdicts.find((verdict) => verdict.id === id)?.journeysConcerned);
        expect({
          heat: concerned('heat-only-when-safe'),
          breaker: concerned('breaker-once-and-ready'),
          door: concerned('door-only-when-cool'),
        }).toEqual(opinion.passing);
      }),
      { numRuns: RUNS, seed: SEED },
    );
    // It met guides of both kinds for every property, and loops.
    for (const [id, { holds, fails }] of tally) {
      // A step of a random guide always has an action; action-unlisted has its own test.
      if (id !== 'actions-listed') expect(fails, id).toBeGreaterThan(20);
      expect(holds, id).toBeGreaterThan(20);
    }
    expect(loops).toBeGreaterThan(20);
  });

  it('shows every failure by a journey of the guide that breaks that very property', () => {
    let shown = 0;
    fc.assert(
      fc.property(randomGuide, (guide) => {
        for (const { id, holds, counterExample } of prove(guide).verdicts) {
          expect(counterExample === undefined).toBe(holds);
          // The first page is wrong without a journey, and no journey leads to what is unreachable.
          const code = counterExample?.fault.code;
          if (!counterExample || id === 'danger-first' || code === 'unreachable') continue;
          expect(brokenAlong(guide, counterExample.journey)).toContain(id);
          shown += 1;
        }
      }),
      { numRuns: RUNS, seed: SEED + 1 },
    );
    expect(shown).toBeGreaterThan(500);
  });
});
