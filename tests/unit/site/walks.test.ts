/** Pages whose step heats or moves the breaker or the door take true journeys, and no others. */
import { describe, expect, it } from 'vitest';
import { formatJourney } from '../../../src/address/journey-text.ts';
import { guides } from '../../../src/content/load.ts';
import { ownNodes, qualify } from '../../../src/guide/ids.ts';
import type { Given, Guide, Journey, NodeId } from '../../../src/guide/types.ts';
import { trace } from '../../../src/journey/trace.ts';
import { leadsTo } from '../../../src/journey/walks.ts';
import { isGuarded, walksOf } from '../../../src/site/walks.ts';

const all = guides();
const walksTo = walksOf(all);
const guarded = all.flatMap((guide) =>
  ownNodes(guide)
    .filter(isGuarded)
    .map((node) => ({ here: qualify(guide.id, node.id), walks: walksTo(guide, node) })),
);

/** Two journeys of a guide to a node: the ways of its first and of its last answer that lead there. */
function journeysTo(guide: Guide, target: NodeId): Journey[] {
  const walk = (order: (answers: readonly Given[]) => readonly Given[]): Journey | undefined => {
    const failed = new Set<NodeId>();
    const from = (at: NodeId): Given[] | undefined => {
      if (at === target) return [];
      if (failed.has(at)) return undefined;
      const answers = guide.nodes.get(at)?.answers ?? [];
      for (const given of order(answers.map(({ id }) => ({ at, answer: id })))) {
        const to = answers.find(({ id }) => id === given.answer)?.to;
        const rest = to === undefined ? undefined : from(to);
        if (rest) return [given, ...rest];
      }
      failed.add(at);
      return undefined;
    };
    return from(guide.start);
  };
  const found = [walk((list) => list), walk((list) => list.toReversed())];
  return found.flatMap((journey) => journey ?? []).length === 0
    ? []
    : found.filter((journey) => journey !== undefined);
}

/** One answer dropped, two swapped, one given twice, one changed, a beginning cut off: everywhere. */
function forgeries(guide: Guide, journey: Journey): Journey[] {
  return journey.flatMap((given, place): Journey[] => {
    const before = journey.slice(0, place);
    const after = journey.slice(place + 1);
    const [next, ...rest] = after;
    const others = guide.nodes.get(given.at)?.answers ?? [];
    return [
      [...before, ...after],
      ...(next ? [[...before, next, given, ...rest]] : []),
      [...before, given, given, ...after],
      ...(place > 0 ? [journey.slice(place)] : []),
      ...others
        .filter(({ id }) => id !== given.answer)
        .map(({ id }) => [...before, { at: given.at, answer: id }, ...after]),
    ];
  });
}

describe('a page whose step heats or moves the breaker or the door', () => {
  it('takes every true journey and no forged one', () => {
    let [taken, refused] = [0, 0];
    for (const { here, walks } of guarded)
      for (const guide of all) {
        const own = here.startsWith(`${guide.id}/`) ? here.slice(guide.id.length + 1) : here;
        if (!guide.nodes.has(own as NodeId)) continue;
        for (const journey of journeysTo(guide, own as NodeId)) {
          const leads = (of: Journey) => leadsTo(walks, here, guide.id, formatJourney(of));
          expect(leads(journey), `${here} ${formatJourney(journey)}`).toBe(true);
          taken += 1;
          for (const forged of forgeries(guide, journey)) {
            const { end, rest } = trace(guide, forged);
            const isTrue = rest.length === 0 && String(end.id) === own;
            expect(leads(forged), `${here} ${formatJourney(forged)}`).toBe(isTrue);
            if (!isTrue) refused += 1;
          }
        }
      }
    expect(guarded.length).toBeGreaterThan(40);
    expect(taken).toBeGreaterThan(200);
    expect(refused).toBeGreaterThan(10_000);
  });

  it.each(['', 'last-gate.all-true', 'danger.fire~last-gate.all-true', '__proto__.a', '~~~', 'a'])(
    'is not misled by %j',
    (journey) => {
      for (const { here, walks } of guarded)
        for (const first of [...all.map(({ id }) => String(id)), '', '__proto__', 'constructor'])
          expect(leadsTo(walks, here, first, journey)).toBe(false);
    },
  );
});
