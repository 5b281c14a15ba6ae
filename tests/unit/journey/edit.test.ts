// Properties over seeded samples of all journeys of the working guide; the seed is in the message.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { guides } from '../../../src/content/load.ts';
import type { Graph, GraphNode, Journey } from '../../../src/guide/types.ts';
import {
  answerDanger,
  change,
  emptyJourney,
  pageKey,
  takeOver,
} from '../../../src/journey/edit.ts';
import type { EditableJourney } from '../../../src/journey/edit.ts';
import { trace } from '../../../src/journey/trace.ts';
import { formatJourney, parseJourney } from '../../../src/address/journey-text.ts';
import { sampleJourneys } from '../../../src/note/sample.ts';
import { oracle } from '../guide/support/oracle.ts';
import { randomGuide } from '../guide/support/random-guide.ts';
import { guideOf, working } from '../note/codebooks.ts';
import { makeRandom } from '../note/random.ts';

const guide = guideOf(working);
const SEED = 4;
const journeys = [...sampleJourneys(guide, 400, SEED)].filter(({ length }) => length > 0);
const text = ({ journey }: EditableJourney): string => formatJourney(journey);
const asked = (way: string): EditableJourney => takeOver(guide, parseJourney(way));

/** A journey without a last answer that told of danger: that one is never taken up again. */
function lasting(journey: Journey): Journey {
  const { end } = trace(guide, journey);
  return end.urgency === 'emergency' ? journey.slice(0, -1) : journey;
}

test(`there are journeys to try, short and long (seed ${SEED})`, () => {
  expect(journeys.length).toBeGreaterThan(350);
  expect(Math.max(...journeys.map(({ length }) => length))).toBeGreaterThan(14);
});

test('no journey passes a page twice, but where a blank display asks about power again', () => {
  const twice = guides().flatMap((of) =>
    [...of.nodes.values()].flatMap((node) => {
      const behind = new Set(node.answers.map(({ to }) => to));
      // A Set's iterator also visits what is added while it runs.
      for (const id of behind) for (const { to } of of.nodes.get(id)?.answers ?? []) behind.add(to);
      const again = [...behind].filter((id) => {
        const other = of.nodes.get(id);
        return other && pageKey(other) === pageKey(node);
      });
      return again.map((id) => `${of.id}: ${node.id} ${id}`);
    }),
  );
  expect(twice).toEqual([
    'door-locked: house-power house-power-cold',
    'door-locked: gfci gfci-cold',
  ]);
});

test('both answers of a page passed twice are kept, each at its own place', () => {
  const way =
    'danger.none~since.outage~house-power.outlets~gfci.back~near.quiet~display.blank~house-power-cold.yes~lamp-cold.dark';
  const call = asked(way);
  expect(text(call)).toBe(way);
  expect(text(change(guide, call, 0, 'none'))).toBe(way);
  const other = change(guide, call, 1, 'overnight');
  expect(text(other)).toBe(
    'danger.none~since.overnight~display.blank~house-power-cold.yes~lamp-cold.dark',
  );
  expect(text(change(guide, other, 1, 'outage'))).toBe(way);
});

test('an answer given again changes nothing, at every place of every journey', () => {
  for (const journey of journeys)
    for (const [index, { answer }] of journey.slice(0, lasting(journey).length).entries()) {
      const again = change(guide, { journey, later: [] }, index, answer);
      expect(text(again), `${index} of ${formatJourney(journey)}`).toBe(
        formatJourney(lasting(journey)),
      );
      expect(again.later.length).toBe(journey.length - again.journey.length);
    }
});

test('any change gives a journey of the guide and is undone by the first answer', () => {
  const random = makeRandom(SEED);
  let kept = 0;
  for (const journey of journeys.map(lasting).filter(({ length }) => length > 0)) {
    const index = random.below(journey.length);
    const first = journey[index] ?? expect.unreachable();
    const here = trace(guide, journey.slice(0, index)).end;
    const other = random.pick(here.edges).answer;
    const changed = change(guide, { journey, later: [] }, index, other);
    const why = `${formatJourney(journey)}, ${index} to ${other} (seed ${SEED})`;
    const { steps, rest } = trace(guide, changed.journey);
    expect(rest, why).toEqual([]);
    expect(changed.journey[index]?.answer, why).toBe(other);
    // What stands after the change was given before, at the same place.
    const before = new Map(trace(guide, journey).steps.map(({ node }, i) => [pageKey(node), i]));
    for (const [at, one] of changed.journey.entries()) {
      const { node } = steps[at] ?? expect.unreachable();
      if (at <= index) continue;
      kept += 1;
      expect(journey[before.get(pageKey(node)) ?? -1]?.answer, why).toBe(one.answer);
      expect(node.byAnswer.get(one.answer)?.to.urgency, why).not.toBe('emergency');
    }
    expect(text(change(guide, changed, index, first.answer)), why).toBe(formatJourney(journey));
  }
  expect(kept).toBeGreaterThan(500);
});

/** An answer at its page, told without the code under test. */
const sayingOf = ({ guide: of, page }: GraphNode, answer: string) => `${of} ${page} ${answer}`;

/** A caller's answers by chance: mostly the next question, now and then an earlier one again. */
function editByChance(of: Graph, seed: number, times: number) {
  const random = makeRandom(seed);
  /** What was answered, each at its page while it was shown. */
  const said = new Set<string>();
  let edited = emptyJourney;
  const states = [];
  for (let i = 0; i < times; i += 1) {
    const { length } = edited.journey;
    const index = random.below(3) === 0 ? random.below(length + 1) : length;
    const { end } = trace(of, edited.journey.slice(0, index));
    // Nearly all answers of the danger question end the journey.
    const edge =
      end.id === of.start && random.below(8) > 0
        ? end.answers.at(-1)
        : end.answers[random.below(Math.max(1, end.answers.length))];
    // At an end there is nothing to answer: the next turn goes back.
    if (!edge) continue;
    said.add(sayingOf(end, edge.id));
    edited = change(of, edited, index, edge.id);
    states.push({ edited, said: new Set(said) });
  }
  return states;
}

describe('no answer is given for the caller', () => {
  /** Where an answer stands that was not given at that very page, and where a fact is set so. */
  function expectSaid(of: Graph, seed: number): { carried: number; facts: number } {
    const count = { carried: 0, facts: 0 };
    let before = 0;
    for (const { edited, said } of editByChance(of, seed, 60)) {
      const { steps, rest, facts } = trace(of, edited.journey);
      const unsaid = steps
        .map(({ node, edge }) => sayingOf(node, edge.id))
        .filter((one) => !said.has(one));
      if (unsaid.length + rest.length > 0)
        expect.unreachable(`${of.id}: ${unsaid.join()} in ${text(edited)} (seed ${seed})`);
      if (steps.length > before + 1) count.carried += 1;
      count.facts += facts.size;
      before = steps.length;
    }
    return count;
  }

  test.each(guides().map((of) => [String(of.id), of] as const))(
    `at a page that was not shown, in %s (seed ${SEED})`,
    (_, of) => {
      const counts = Array.from({ length: 60 }, (__, i) => expectSaid(of, SEED + i));
      const sum = (key: 'carried' | 'facts') => counts.reduce((all, count) => all + count[key], 0);
      expect(sum('carried')).toBeGreaterThan(20);
      expect(sum('facts')).toBeGreaterThan(20);
    },
  );

  test(`at a page that was not shown, in random guides (seed ${SEED})`, () => {
    let carried = 0;
    fc.assert(
      fc.property(randomGuide, fc.nat(), (of, seed) => {
        const lost = [...of.nodes.values()].some(({ answers }) =>
          answers.some(({ to }) => !of.nodes.has(to)),
        );
        fc.pre(!lost && !oracle(of).loops);
        carried += expectSaid(of, seed).carried;
      }),
      { numRuns: 200, seed: SEED },
    );
    expect(carried).toBeGreaterThan(50);
  });

  test('what names a page names one page: copies differ in nothing that is said there', () => {
    const pages = guides().flatMap(({ nodes }) => [...nodes.values()]);
    expect(pages.length).toBeGreaterThan(300);
    const said = new Map<string, string>();
    for (const node of pages) {
      const name = node.sentences.replace(/^.*\//, '');
      const what = JSON.stringify([
        name,
        node.kind,
        node.caution,
        node.answers.map(({ id }) => id),
      ]);
      expect(said.get(pageKey(node)) ?? what, node.id).toBe(what);
      said.set(pageKey(node), what);
    }
  });

  test('a hand held near a gas burner says nothing of the element (defect 2)', () => {
    const burner = guides().find(({ id }) => (id as string) === 'burner') ?? expect.unreachable();
    const way = 'danger.none~what.no-light~gas-off.done~spark.clicks~which.one~near.cool';
    let edited = takeOver(burner, parseJourney(way));
    expect(trace(burner, edited.journey).end.id).toBe('look-gas');
    for (const [index, answer] of [
      ...[[1, 'element'] as const, [2, 'coil'] as const],
      ...[[3, 'cold'] as const, [4, 'one'] as const],
    ])
      edited = change(burner, edited, index, answer);
    const { end, facts } = trace(burner, edited.journey);
    expect(text(edited)).toBe('danger.none~what.element~el-kind.coil~el-how.cold~el-which.one');
    expect([end.page, end.sentences]).toEqual(['near-el', 'near']);
    expect(facts.has('cooled')).toBe(false);
    // Its caution counts as read only where this page was.
    expect(pageKey(end)).not.toBe('burner/near');
  });
});

describe('the locked door', () => {
  const way =
    'danger.none~since.over-4~near.quiet~display.time~off-once.same~controls.buttons~try-door.stuck';

  test('a change in the middle keeps what still fits, over to another track', () => {
    const call = change(guide, asked(way), 3, 'error');
    expect(text(call)).toBe('danger.none~since.over-4~near.quiet~display.error');
    expect(trace(guide, call.journey).end.id).toBe('error-write-cold');
    const went = change(guide, call, 4, 'written');
    expect(text(went)).toBe(
      'danger.none~since.over-4~near.quiet~display.error~error-write-cold.written~off-once-cold.same~controls-cold.buttons~try-door-cold.stuck',
    );
    expect(went.later).toEqual([]);
  });

  test('the same sentences at another place do not count as answered', () => {
    const waited = `${way.replace('near.quiet', 'near.heat~wait.cool')}~panel.ready~breaker-off.done~breaker-on.stayed~listen.click~try-again.stuck~inside.nothing~forced.no~last-gate.all-true~short-clean.ended`;
    expect(text(asked(waited))).toBe(waited);
    const call = change(guide, asked(waited), 2, 'quiet');
    expect(text(call)).toBe(waited.replace('near.heat~wait.cool', 'near.quiet'));
    expect(call.later.map(({ at }) => at)).toEqual(['wait']);
    const { end } = trace(guide, call.journey);
    expect([end.sentences, end.page]).toEqual(['wait', 'cool-again']);
  });

  test('a danger is never taken up again', () => {
    const call = change(guide, asked(`${way}~panel.fire`), 1, 'outage');
    expect(text(call)).toBe('danger.none~since.outage');
    const on = change(guide, call, 2, 'yes');
    expect(text(on)).toBe(way.replace('since.over-4', 'since.outage~house-power.yes'));
    expect(on.later).toEqual([{ at: 'panel', answer: 'fire' }]);
  });

  test('an answer that is not there changes nothing', () => {
    const call = asked(way);
    expect(change(guide, call, 3, 'purple')).toBe(call);
    expect(change(guide, call, 99, 'none')).toBe(call);
    expect(change(guide, emptyJourney, 1, 'none')).toBe(emptyJourney);
  });

  test('a journey of which a part fits is kept up to there, the rest for later', () => {
    const call = takeOver(guide, parseJourney('danger.none~since.no-such~display.lock'));
    expect(text(call)).toBe('danger.none');
    expect(takeOver(guide, parseJourney('nowhere.none~x.y'))).toEqual(emptyJourney);
  });
});

describe('the danger question in mid-call', () => {
  const call = asked('danger.none~since.over-4~near.quiet');

  test('with the same answer changes nothing', () => {
    expect(answerDanger(guide, call, 'none')).toBe(call);
  });

  test('with a danger leaves from where the call stands', () => {
    expect(text(answerDanger(guide, call, 'gas'))).toBe(
      'danger.none~since.over-4~near.quiet~display.gas',
    );
  });

  test('not sure has no way out there: the first answer changes, the others are kept', () => {
    const unsure = answerDanger(guide, call, 'unsure');
    expect(text(unsure)).toBe('danger.unsure');
    expect(text(answerDanger(guide, unsure, 'none'))).toBe(text(call));
  });

  test('after an end begins the journey with the danger', () => {
    const over = asked('danger.none~since.outage~house-power.out');
    expect(text(answerDanger(guide, over, 'fire'))).toBe('danger.fire');
  });

  test('every danger leads to its own stop from every place', () => {
    const dangers = guide.first.edges.filter(({ to }) => to.urgency === 'emergency');
    expect(dangers.length).toBe(8);
    for (const journey of journeys.slice(0, 100))
      for (const { answer, to } of dangers) {
        if (journey[0]?.answer === answer) continue;
        const there = answerDanger(guide, { journey, later: [] }, answer);
        expect(trace(guide, there.journey).end.id, formatJourney(journey)).toBe(to.id);
      }
  });
});
