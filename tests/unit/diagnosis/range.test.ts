/** What one model for the whole range promises, and what the tables of single guides got wrong. */
import { describe, expect, it } from 'vitest';
import { loadFigures } from '../../../src/cli/route.ts';
import { currentCodebooks } from '../../../src/content/codebooks.ts';
import { content, guides, model as whole, models } from '../../../src/content/load.ts';
import { complaintOf, evidenceOf, observed } from '../../../src/diagnosis/evidence.ts';
import { posterior, shares } from '../../../src/diagnosis/posterior.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import { stability } from '../../../src/diagnosis/stability.ts';
import type { Evidence } from '../../../src/diagnosis/types.ts';
import { parseId } from '../../../src/guide/ids.ts';
import type { Given, GuideId } from '../../../src/guide/types.ts';
import { readVisit } from '../../../src/visit/read-visit.ts';
import { journeyOf } from '../situations/walked.ts';
import { given, told } from './support/real.ts';

const current = currentCodebooks(content(), new Date('2026-11-25T10:00:00Z'));
if (!current.ok) throw new Error(JSON.stringify(current.error));
const { codebooks, newest } = current.value;

/** What the preview makes of a caller's way. */
function visit(guide: string, way: string) {
  const from = guides().find(({ id }) => String(id) === guide);
  if (!from) throw new Error(`no guide ${guide}`);
  const journey = journeyOf(from, way);
  const note = {
    release: newest,
    guide: guide as GuideId,
    journey,
    day: 1,
    details: {},
    error: '',
  };
  const view = readVisit(note, codebooks, loadFigures());
  if (!view.model) throw new Error('no model');
  return { ...view, model: view.model };
}

const share = (evidence: Evidence, fault: string): number =>
  posterior(whole(), evidence).find((one) => String(one.fault) === fault)?.share ?? NaN;

describe('the same observations', () => {
  const SEED = 7;

  it(`give the same shares whichever guide they came through (seed ${SEED})`, () => {
    const random = seeded(SEED);
    let handed = 0;
    let compared = 0;
    for (const guide of guides())
      for (let count = 0; count < 120; count++) {
        const journey: Given[] = [];
        let node = guide.nodes.get(guide.start);
        while (node && node.answers.length > 0 && random() < 0.97) {
          const here = parseId(node.id).guide;
          const over = node.answers.filter(({ to }) => parseId(to).guide !== here);
          const list = over.length > 0 && random() < 0.5 ? over : node.answers;
          const answer = list[Math.floor(random() * list.length)];
          if (!answer) break;
          journey.push({ at: node.id, answer: answer.id });
          node = guide.nodes.get(answer.to);
        }
        const course = {
          first: guide.id,
          last: node?.guide ?? guide.id,
          visit: node?.kind === 'stop',
        };
        const own = models()[guide.id];
        if (!own || complaintOf(own, course) === undefined) continue;
        const evidence = observed(own, course, evidenceOf(guide, journey));
        // What this guide's part of the model makes of it, and the whole; told in another order.
        const found = shares(own, evidence);
        const wanted = shares(whole(), observed(whole(), course, evidenceOf(guide, journey)));
        const turned = shares(whole(), evidence.toReversed());
        for (const [fault, one] of wanted.entries()) {
          expect(found[fault]).toBeCloseTo(one, 12);
          expect(turned[fault]).toBeCloseTo(one, 12);
        }
        compared++;
        if (course.first !== course.last) handed++;
      }
    expect(compared).toBeGreaterThan(700);
    expect(handed).toBeGreaterThan(20);
  });

  it('rank a blank display after a self-clean alike in both guides that ask for it', () => {
    const first = (pairs: Evidence) => posterior(whole(), pairs)[0]?.fault;
    const locked = told('since.overnight', 'display.blank', 'lamp.works');
    const cold = observed(
      whole(),
      { first: 'no-heat', last: 'no-heat' },
      Object.entries({ what: 'blank', when: 'clean', lamp: 'works' }).map(([key, answer]) => ({
        key,
        answer,
      })),
    );
    expect([first(locked), first(cold)]).toEqual(['cut-out', 'cut-out']);
  });

  it('rank alike whether a detail was told by the walk or not: it counts once', () => {
    const pairs = [
      ['fuel.gas-oven', 'detail.fuel.gas'],
      ['lamp.dark', 'detail.lamp.dark'],
      ['which.all', 'detail.burners.none'],
      ['door-locked/since.outage', 'detail.storm.yes'],
      ['door-locked/controls.buttons', 'detail.controls.keys'],
    ] as const;
    for (const [walk, detail] of pairs) {
      expect(shares(whole(), given(walk, detail)), detail).toEqual(shares(whole(), given(walk)));
      expect(shares(whole(), given(detail)), detail).not.toEqual(shares(whole(), []));
    }
  });

  it('of burners say nothing on an oven that has none', () => {
    const wall = given('detail.kind.wall');
    const off = given('detail.burners.none');
    const of = (evidence: Evidence) => share(evidence, 'supply-leg');
    expect(of([...off, ...wall])).toBeCloseTo(of(wall), 12);
    expect(of(off)).toBeGreaterThan(5 * of([]));
  });

  it('count after a hand-over, too', () => {
    const way = 'danger.none what.error error-write.written';
    const through = visit('error-shows', way).evidence;
    expect(through.map(({ key }) => key)).toContain('error-shows/what');
    const over = observed(whole(), { first: 'error-shows', last: 'door-locked' }, [
      { key: 'what', answer: 'error' },
      { key: 'door-locked/try-door', answer: 'stuck' },
    ]);
    expect(share(over, 'sensor')).toBeGreaterThan(share(over.slice(0, 1), 'sensor'));
    expect(share(over, 'sensor')).toBeGreaterThan(
      share(
        over.filter(({ key }) => key !== 'error-shows/what'),
        'sensor',
      ),
    );
  });
});

describe('a cure that was not tried', () => {
  const cold = 'since.never near.quiet display.lock';
  const share = (way: string) =>
    posterior(whole(), told(...way.split(' '))).find(
      ({ fault }) => String(fault) === 'control-lock',
    )?.share ?? NaN;

  it('says nothing by a door that is still locked', () => {
    for (const answer of ['no-change', 'no-button']) {
      const before = share(`${cold} control-lock.${answer}`);
      const after = share(`${cold} control-lock.${answer} try-door.stuck`);
      expect(after, answer).toBeGreaterThan(0.9 * before);
    }
    expect(share(`${cold} control-lock.unsure try-door.stuck`)).toBeGreaterThan(0.5);
  });

  it('says much when the lock went off and the door is still stuck', () => {
    const odds = (way: string) => share(way) / (1 - share(way));
    const before = odds(`${cold} control-lock.went-off`);
    expect(odds(`${cold} control-lock.went-off try-door.stuck`)).toBeLessThan(before / 3);
  });
});

describe('an oven that has cooled', () => {
  const way =
    'danger.none since.under-1 wait.cool display.time off-once.same controls.buttons try-door.stuck panel.ready breaker-off.done breaker-on.stayed listen.nothing try-again.stuck inside.nothing forced.no';

  it('is not "not yet cool" at the visit, nor firmly so', () => {
    const { model, evidence, state } = visit('door-locked', way);
    expect(state).not.toBe('open');
    const ranking = posterior(model, evidence);
    expect(String(ranking[0]?.fault)).not.toBe('not-cool');
    const own = ranking.find(({ fault }) => String(fault) === 'not-cool');
    expect(own?.share).toBeLessThan(0.05);
    expect(stability(model, evidence, { draws: 200 }).degree).not.toBe('firm');
  });

  it('counts how long ago, the fan and the heat once: they tell one fact', () => {
    const facts = ['since.under-1', 'near.heat'];
    const odds = (pairs: readonly string[]) => {
      const own = share(told(...pairs), 'not-cool');
      return own / (1 - own);
    };
    const [none, both] = [odds([]), odds(facts)];
    const apart = facts.reduce((product, one) => (product * odds([one])) / none, 1);
    expect(both / none).toBeLessThan(apart / 1.5);
  });

  it('counts a clock that flashes after an outage for little: the outage is told already', () => {
    const hung = (...pairs: readonly string[]) => share(told(...pairs), 'control-hung');
    const outage = hung('since.outage');
    expect(hung('since.outage', 'display.flashing', 'detail.storm.yes')).toBeLessThan(
      outage + 0.15,
    );
    expect(hung('since.over-4', 'display.flashing')).toBeGreaterThan(hung('since.over-4') + 0.1);
  });

  it('makes what was felt before the wait count for nothing after it', () => {
    const after = told('since.under-1', 'wait.cool');
    expect(share(told('since.under-1', 'near.heat', 'wait.cool'), 'not-cool')).toBe(
      share(after, 'not-cool'),
    );
  });
});

describe('what is not listed', () => {
  it('is moved by no answer on the average, and gains where all that is listed fits badly', () => {
    const none = whole().faults.findIndex(({ id }) => String(id) === 'none-of-these');
    for (const { key, answers } of whole().evidence) {
      const expected = answers.reduce((sum, answer) => {
        const now = posterior(whole(), [{ key, answer }]);
        return sum + (now.find(({ fault }) => String(fault) === 'none-of-these')?.share ?? NaN);
      }, 0);
      expect(expected / answers.length, key).toBeGreaterThan(0.005);
    }
    expect(whole().faults[none]?.parts).toEqual([]);
  });
});
