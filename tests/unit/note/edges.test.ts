import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Journey } from '../../../src/guide/types.ts';
import { makeCodebooks } from '../../../src/note/codebook.ts';
import type { CodebookGuide } from '../../../src/note/codebook.ts';
import type { ReleaseAnswer, ReleaseGuide, ReleaseNode } from '../../../src/note/release.ts';
import { rankOf, unrank } from '../../../src/note/edges.ts';
import { guideOf, smallRelease, working } from './codebooks.ts';

/** All journeys in order, by plain recursion over the release itself. */
function enumerate(guide: ReleaseGuide): string[] {
  const found: string[] = [];
  const go = (id: string, path: string): void => {
    found.push(path);
    const node = guide.nodes.find((one) => one.id === id);
    if (!node || node.kind === 'stop' || node.kind === 'finish') return;
    const own = node.answers ?? [];
    const exits =
      id === guide.start
        ? []
        : guide.exits.filter(([exit]) => !own.some(([answer]) => answer === exit));
    for (const [answer, to] of [...own, ...exits]) go(to, `${path} ${id}.${answer}`);
  };
  go(guide.start, '');
  return found;
}

const written = (journey: Journey | undefined): string =>
  (journey ?? []).map(({ at, answer }) => ` ${at}.${answer}`).join('');

function codebookGuide(guide: ReleaseGuide): CodebookGuide {
  return guideOf(makeCodebooks([{ ...smallRelease(1), guides: [guide] }]));
}

/** Graphs of up to seven nodes; answers lead to later nodes, the last two are stops. */
const anyGuide = fc
  .integer({ min: 1, max: 5 })
  .chain((open) =>
    fc.record({
      open: fc.constant(open),
      targets: fc.array(fc.array(fc.nat(), { minLength: 1, maxLength: 4 }), {
        minLength: open,
        maxLength: open,
      }),
      exits: fc.boolean(),
    }),
  )
  .map(({ open, targets, exits }): ReleaseGuide => {
    const nodes = targets.map((list, i): ReleaseNode => {
      const answers = list.map((raw, k): ReleaseAnswer => {
        const later = open + 2 - (i + 1);
        return [`a${k}`, `n${i + 1 + (raw % later)}`];
      });
      return { id: `n${i}`, kind: i % 2 === 0 ? 'question' : 'step', answers };
    });
    const stops = [open, open + 1].map((i): ReleaseNode => ({ id: `n${i}`, kind: 'stop' }));
    // The exit a1 is hidden wherever a node has an answer a1 of its own.
    const danger: ReleaseAnswer[] = [
      ['a1', `n${open}`],
      ['x', `n${open + 1}`],
    ];
    return { id: 'any', start: 'n0', nodes: [...nodes, ...stops], exits: exits ? danger : [] };
  });

describe('numbering journeys', () => {
  test('agrees with plain enumeration on any small graph', () => {
    fc.assert(
      fc.property(anyGuide, (frozen) => {
        const guide = codebookGuide(frozen);
        const all = enumerate(frozen);
        expect(guide.first.journeys).toBe(BigInt(all.length));
        expect(all.map((_, i) => written(unrank(guide, BigInt(i))))).toEqual(all);
        for (const [i] of all.entries()) {
          const rank = rankOf(guide, unrank(guide, BigInt(i)) ?? []);
          expect(rank.ok && rank.value).toBe(BigInt(i));
        }
      }),
      { numRuns: 300 },
    );
  });

  test('counts and orders a graph worked out by hand', () => {
    const [frozen] = smallRelease(1).guides;
    if (!frozen) throw new Error('no guide');
    const guide = codebookGuide(frozen);
    // third: stop here, ok, danger = 3. second: 1 + 3 + 1 + 1 = 6. first: 1 + 1 + 6 + 3 = 11.
    expect(guide.first.journeys).toBe(11n);
    expect([0n, 1n, 2n, 3n, 7n, 8n, 10n].map((rank) => written(unrank(guide, rank)))).toEqual([
      '',
      ' first.danger',
      ' first.fine',
      ' first.fine second.yes',
      ' first.fine second.danger',
      ' first.unsure',
      ' first.unsure third.danger',
    ]);
  });

  test('no journey has a rank outside', () => {
    const guide = guideOf(working);
    expect(unrank(guide, -1n)).toBeUndefined();
    expect(unrank(guide, guide.first.journeys)).toBeUndefined();
    expect(unrank(guide, 1n << 200n)).toBeUndefined();
  });

  test('says where a journey leaves the guide', () => {
    const guide = guideOf(makeCodebooks([smallRelease(1)]));
    const journey = [
      { at: 'first', answer: 'fine' },
      { at: 'third', answer: 'ok' },
    ] as unknown as Journey;
    expect(rankOf(guide, journey)).toEqual({ ok: false, error: { step: 1 } });
    const after = [
      { at: 'first', answer: 'danger' },
      { at: 'help', answer: 'danger' },
    ] as unknown as Journey;
    expect(rankOf(guide, after)).toEqual({ ok: false, error: { step: 1 } });
  });

  test('the danger answers are open at every question and step but count once at the start', () => {
    const guide = guideOf(working);
    const open = [...guide.nodes.values()].filter(({ edges }) => edges.length > 0);
    expect(open.length).toBeGreaterThan(20);
    for (const node of open) {
      const fire = node.edges.filter(({ answer }) => answer === 'fire');
      expect(fire, node.id).toHaveLength(1);
    }
  });
});
