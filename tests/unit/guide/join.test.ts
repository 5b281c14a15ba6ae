import { describe, expect, it } from 'vitest';
import { joinGuides } from '../../../src/guide/join.ts';
import type { GuideSource } from '../../../src/guide/join.ts';
import { loadPart } from '../../../src/guide/load.ts';
import type { JoinTrouble } from '../../../src/guide/problem.ts';
import { prove } from '../../../src/proof/prove.ts';
import type { AnswerId, Guide, NodeId } from '../../../src/guide/types.ts';
import { trace } from '../../../src/journey/trace.ts';
import { freeze } from '../../../src/note/freeze.ts';
import { makeCodebooks } from '../../../src/note/codebook.ts';
import { releaseSchema } from '../../../src/note/release-schema.ts';
import { rankOf, unrank } from '../../../src/note/edges.ts';
import { oracle } from './support/oracle.ts';
import { here, there } from './support/two-guides.ts';

function partOf(source: string, file = 'graph.yaml'): GuideSource {
  const part = loadPart(source, file);
  if (!part.ok) throw new Error(JSON.stringify(part.error));
  return part.value;
}

function joined(...sources: readonly string[]): Guide[] {
  const guides = joinGuides(sources.map((source) => partOf(source)));
  if (!guides.ok) throw new Error(JSON.stringify(guides.error));
  return [...guides.value];
}

function firstOf(...sources: readonly string[]): Guide {
  const [first] = joined(...sources);
  if (!first) throw new Error('no guide');
  return first;
}

const asJourney = (text: string) =>
  text.split(' ').map((pair) => {
    const [at = '', answer = ''] = pair.split('.');
    return { at: at as NodeId, answer: answer as AnswerId };
  });

describe('a guide joined with one it hands over to', () => {
  const guide = firstOf(here, there);

  it('has what its journeys reach of it, and leaves the other as it was', () => {
    const ids = [...guide.nodes.keys()].filter((id) => id.includes('/'));
    expect(ids.toSorted()).toEqual(
      'there/done there/forced there/heat there/inside there/try there/try-seen'.split(' '),
    );
    const [, other] = joined(here, there);
    expect([...(other?.nodes.keys() ?? [])]).toEqual([...partOf(there).guide.nodes.keys()]);
  });

  it('is walked through both, with its own way out to a danger’s stop', () => {
    const way = asJourney('danger.none look.odd there/try.yes there/inside.nothing');
    const end = (journey: typeof way) => {
      const { end: last, rest } = trace(guide, journey);
      return rest.length === 0 ? last.id : undefined;
    };
    expect(end(way)).toBe('there/forced');
    expect(end([...way, ...asJourney('there/forced.fire')])).toBe('stop-fire');
  });

  it('goes on on the track the answer names', () => {
    const { end, rest } = trace(guide, asJourney('danger.none look.error'));
    expect([end.id, end.guide, end.page, end.track, rest]).toEqual([
      ...['there/try-seen', 'there', 'try', 'seen'],
      [],
    ]);
  });

  it('is proved over both, as every journey spelled out says', () => {
    const [proof, opinion] = [prove(guide), oracle(guide)];
    expect([...opinion.broken]).toEqual([]);
    expect(proof.holds).toBe(true);
    expect(Number(proof.journeys.all)).toBe(opinion.all);
    expect(opinion.passing.heat).toBeGreaterThan(0);
  });

  it('reaches through a guide into a third, and that one is there once', () => {
    const third = here.replace('id: here', 'id: first').replaceAll('there/try', 'here/look');
    const both = third.replace('well: { to: done }', 'well: { to: there/try }');
    const entered = here.replace('start: danger', 'start: danger\nentries: [look]');
    // An error seen in the first guide would be unsafe in the third.
    const unseen = both.replace(', track: seen, sets: [error-seen]', '');
    const whole = firstOf(unseen, entered, there);
    expect(prove(firstOf(both.replace(', track: seen', ''), entered, there)).holds).toBe(false);
    const ids = [...whole.nodes.keys()] as string[];
    expect(ids).toContain('here/look');
    expect(ids.filter((id) => id === 'there/try')).toHaveLength(1);
    expect(prove(whole).holds).toBe(true);
    expect(Number(prove(whole).journeys.all)).toBe(oracle(whole).all);
  });
});

describe('a slip at the joint', () => {
  // Each makes a guide that is unsafe by every journey spelled out; the proof must say so too.
  it.each([
    ['the track is lost', ', track: seen, sets', ', sets'],
    ['led to another entry', 'odd: { to: there/try }', 'odd: { to: there/heat }'],
  ])('is caught by the proof: %s', (_, from, to) => {
    const guide = firstOf(here.replace(from, to), there.replace('[try]', '[try, heat]'));
    expect([...oracle(guide).broken]).toContain('heat-only-when-safe');
    const proof = prove(guide);
    expect(proof.holds).toBe(false);
    const heat = proof.verdicts.find(({ id }) => id === 'heat-only-when-safe');
    expect(heat?.counterExample?.journey.at(-1)?.at).toMatch(/^there\/|^look/);
  });

  const slips: readonly [string, string, string, JoinTrouble['code'], number][] = [
    [
      'no such guide',
      here.replace('odd: { to: there', 'odd: { to: tehre'),
      there,
      'guide-unknown',
      15,
    ],
    ['no entry', here, there.replace('entries: [try]\n', ''), 'entry-unknown', 15],
    ['another node', here.replace('there/try }', 'there/look }'), there, 'entry-unknown', 15],
    [
      'a track no journey comes on',
      here.replace('there/try }', 'there/inside, track: seen }'),
      there.replace('[try]', '[try, inside]'),
      'entry-off-track',
      15,
    ],
    ['other dangers', here, there.replaceAll('fire', 'gas'), 'dangers-differ', 15],
    [
      'a circle',
      here.replace('start: danger', 'start: danger\nentries: [look]'),
      there.replace(
        "'yes': { to: { fresh: inside, seen: done } }",
        "'yes': { to: { fresh: inside, seen: here/look } }",
      ),
      'guide-circle',
      20,
    ],
  ];
  it.each(slips)('is told with its place: %s', (_, first, second, code, line) => {
    const found = joinGuides([partOf(first, 'here.yaml'), partOf(second, 'there.yaml')]);
    const problem = (found.ok ? [] : found.error).find((one) => one.code === code);
    expect(problem?.place.line).toBe(line);
    expect(problem?.file).toBe(code === 'guide-circle' ? 'there.yaml' : 'here.yaml');
  });

  it('was shown every kind of trouble', () => {
    const all: Record<JoinTrouble['code'], true> = {
      ...{ 'guide-unknown': true, 'entry-unknown': true, 'entry-off-track': true },
      ...{ 'dangers-differ': true, 'guide-circle': true },
    };
    expect([...new Set(slips.map(([, , , code]) => code))].toSorted()).toEqual(
      Object.keys(all).toSorted(),
    );
  });
});

describe('the codebook of guides that hand over', () => {
  const guides = joined(here, there);
  const release = freeze(guides, [], 1, '2026-11-25');
  const [codebook] = makeCodebooks([release]).values();

  it('holds each guide once', () => {
    expect(release.guides.map(({ nodes }) => nodes.length)).toEqual(
      [here, there].map((source) => partOf(source).guide.nodes.size),
    );
    expect(releaseSchema.safeParse(release).success).toBe(true);
  });

  it('counts the journeys the proof counts, and ranks each of them', () => {
    for (const guide of guides) {
      const own = codebook?.guides.find(({ id }) => id === guide.id);
      if (!own) throw new Error(guide.id);
      expect(own.first.journeys).toBe(prove(guide).journeys.all);
      let crossed = 0;
      for (let rank = 0n; rank < own.first.journeys; rank += 1n) {
        const journey = unrank(own, rank);
        if (!journey) throw new Error(`${rank}`);
        const back = rankOf(own, journey);
        expect(back.ok && back.value).toBe(rank);
        expect(trace(guide, journey).end.id).toBe(trace(own, journey).end.id);
        if (journey.some(({ at }) => at.includes('/'))) crossed += 1;
      }
      expect(crossed > 0).toBe(guide.id === ('here' as string));
    }
  });

  it.each([
    ['a hand-over to no node', 'there/try', 'there/tyr', 'unknown-hand-over'],
    ['a circle of guides', '["nothing","forced"]', '["nothing","here/look"]', 'guide-circle'],
  ])('is refused with %s', (_, from, to, code) => {
    const broken = JSON.stringify(release).replace(from, to);
    const parsed = releaseSchema.safeParse(JSON.parse(broken));
    expect(parsed.error?.issues.map(({ message }) => message)).toContain(code);
  });
});
