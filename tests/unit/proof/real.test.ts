import { describe, expect, it } from 'vitest';
import { prove } from '../../../src/proof/prove.ts';
import { gradeOf } from '../../../src/text/readability.ts';
import { realGuide, realSentences } from '../guide/support/real.ts';
import { everyJourney, everyState } from '../../mutants/truth.ts';
import { doorLocked } from '../guide/support/meaning.ts';

const guide = realGuide();
const proof = prove(guide, { sentences: realSentences, grade: gradeOf });

describe('the published guide', () => {
  it('holds in every property, and no property is about nothing', () => {
    expect(proof.verdicts).toHaveLength(12);
    for (const verdict of proof.verdicts) {
      expect(verdict).toMatchObject({ holds: true, faults: [] });
      // A good end closes a journey, so only those concern it that come to it.
      const least = verdict.id === 'done-only-when-well' ? 100_000n : 1_000_000n;
      expect(verdict.journeysConcerned, verdict.id).toBeGreaterThan(least);
    }
    expect(proof.holds).toBe(true);
  });

  // All of them, spelled out: some 80 million, exits counted in bulk.
  it('holds and counts the same with every single journey spelled out', () => {
    const spelled = everyJourney(guide, doorLocked);
    expect([...spelled.broken]).toEqual([]);
    expect(BigInt(spelled.all)).toBe(proof.journeys.all);
    expect(BigInt(spelled.complete)).toBe(proof.journeys.complete);
    expect(spelled.longest).toBe(proof.journeys.longest);
    expect(spelled.all).toBeGreaterThan(1_000_000);
  });

  it('holds over every state of what the reader has told', () => {
    const { broken, states } = everyState(guide, doorLocked);
    expect([...broken]).toEqual([]);
    expect(states).toBeGreaterThan(guide.nodes.size);
  });
});
