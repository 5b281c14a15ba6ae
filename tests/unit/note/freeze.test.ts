import { describe, expect, test } from 'vitest';
import * as content from '../../../src/content/load.ts';
import type { Answer, Guide, GuideNode, NodeId } from '../../../src/guide/types.ts';
import { differs } from '../../../src/note/freeze.ts';
import { releaseSchema } from '../../../src/note/release-schema.ts';
import type { Release, ReleaseGuide } from '../../../src/note/release.ts';
import { smallRelease, workingRelease } from './codebooks.ts';

const [guides, details] = [content.guides(), content.details()];
const release = workingRelease();
const place = guides.findIndex(({ id }) => (id as string) === 'door-locked');
const guide = guides[place] ?? expect.unreachable();

/** The guide with one of its nodes changed. */
function changed(id: string, change: (node: GuideNode) => GuideNode): Guide {
  const nodes = new Map(
    [...guide.nodes].map(([key, node]) => [key, key === id ? change(node) : node]),
  );
  return { ...guide, nodes };
}

const differences = (now: Guide): unknown => differs(guides.with(place, now), details, release);

describe('freezing', () => {
  test('keeps what codes depend on, and no sentence', () => {
    expect(release.guides[place]?.nodes.length).toBe(guide.nodes.size);
    expect(JSON.stringify(release)).not.toMatch(/[a-z] [a-z]/);
    const frozen = release.guides[place]?.nodes.find(({ id }) => id === 'danger');
    expect(frozen?.answers?.at(-1)).toEqual(['none', 'since']);
  });

  test('survives its file', () => {
    expect(releaseSchema.parse(JSON.parse(JSON.stringify(release)))).toEqual(release);
  });
});

describe('telling when a release is due', () => {
  test('the same guides are no difference, whatever the order of a node’s parts', () => {
    expect(differs(guides, details, release)).toEqual([]);
    const reordered = JSON.parse(JSON.stringify(release), (_, value: unknown) =>
      value !== null && typeof value === 'object' && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).toReversed())
        : value,
    ) as Release;
    expect(differs(guides, details, reordered)).toEqual([]);
  });

  test.each<[string, string, (node: GuideNode) => GuideNode]>([
    ['a retargeted answer', 'since', (node) => ({ ...node, answers: node.answers.map(toStop) })],
    ['answers in another order', 'since', (n) => ({ ...n, answers: n.answers.toReversed() })],
    ['an answer less', 'since', (node) => ({ ...node, answers: node.answers.slice(1) })],
    ['another urgency', 'stop-book', (node) => ({ ...node, urgency: 'today' })],
    ['other sentences', 'since', (node) => ({ ...node, sentences: 'x' as GuideNode['sentences'] })],
    ['another page', 'since', (node) => ({ ...node, page: 'x' })],
    ['another track', 'since', (node) => ({ ...node, track: 'calm' })],
    ['heat', 'since', (node) => ({ ...node, heat: true })],
    ['another flag of an end', 'stop-book', (node) => ({ ...node, flag: 'hum' })],
    ['another flag of an answer', 'since', withAnswers({ flag: 'hum' })],
    ['another time since the heat', 'since', withAnswers({ heatEnded: 30 })],
  ])('%s', (_, id, change) => {
    expect(differences(changed(id, change))).toEqual([{ part: 'node', guide: guide.id, node: id }]);
  });

  test('a node gone, another start, another exit, another guide, other details', () => {
    const nodes = new Map([...guide.nodes].filter(([id]) => id !== 'since'));
    const gone = { part: 'node', guide: guide.id, node: 'since' };
    expect(differences({ ...guide, nodes })).toEqual([gone]);
    const frame = [{ part: 'guide', guide: guide.id }];
    expect(differences({ ...guide, start: 'since' as NodeId })).toEqual(frame);
    expect(differences({ ...guide, exits: guide.exits.slice(1) })).toEqual(frame);
    expect(differs([], details, release)).toEqual([
      { part: 'guides', frozen: guides.map(({ id }) => id), now: [] },
    ]);
    expect(differs(guides, details.slice(1), release)).toEqual([{ part: 'details' }]);
  });

  test('what no code depends on is no difference', () => {
    expect(differences(changed('since', (node) => ({ ...node, drawing: 'other' })))).toEqual([]);
    expect(differences(changed('since', withAnswers({ sets: ['cooled'] })))).toEqual([]);
  });
});

/** All answers of a node changed alike. */
function withAnswers(change: Partial<Answer>): (node: GuideNode) => GuideNode {
  return (node) => ({ ...node, answers: node.answers.map((answer) => ({ ...answer, ...change })) });
}

function toStop(answer: Answer): Answer {
  return { ...answer, to: 'stop-book' as NodeId };
}

test('the newest frozen release holds every guide, and still fits it', () => {
  const newest = content.releases().at(-1) ?? expect.unreachable('no release is frozen');
  expect(guides.length).toBeGreaterThan(0);
  // A guide without a place in it would have no codes, and its note page none.
  expect(differs(guides, details, newest), 'run npm run release').toEqual([]);
});

describe('a release file is checked', () => {
  const small = smallRelease(1);
  const first = small.guides[0] ?? expect.unreachable();
  const withGuide = (change: Partial<ReleaseGuide>): unknown => ({
    ...small,
    guides: [{ ...first, ...change }],
  });
  const node = (id: string, to: string): unknown => ({ id, kind: 'step', answers: [['ok', to]] });
  const stop = { id: 'help', kind: 'stop', urgency: 'soon' };

  test('a good one passes', () => {
    expect(releaseSchema.safeParse(small).success).toBe(true);
    expect(releaseSchema.safeParse(release).success).toBe(true);
  });

  test.each([
    [
      'loop',
      withGuide({ start: 'a', exits: [], nodes: [node('a', 'b'), node('b', 'a')] as never }),
    ],
    ['unknown-target', withGuide({ start: 'a', nodes: [node('a', 'b'), stop] as never })],
    ['unknown-start', withGuide({ start: 'nowhere' })],
    ['repeated-node', withGuide({ nodes: [...first.nodes, stop] as never })],
    ['repeated-answer', withGuide({ exits: [...first.exits, ...first.exits] })],
    ['exit-not-to-stop', withGuide({ exits: [['danger', 'second']] })],
    [
      'unknown-mark',
      withGuide({
        nodes: first.nodes.map((one) => ({ ...one, marks: { answers: { x: { flag: 'hum' } } } })),
      }),
    ],
    ['open-without-answers', withGuide({ nodes: [...first.nodes, { id: 'x', kind: 'step' }] })],
    ['repeated-guide', { ...small, guides: [...small.guides, ...small.guides] }],
    ['repeated-detail', { ...small, details: [...small.details, ...small.details] }],
    ['invalid_format', { ...small, details: [{ id: 'A b', answers: ['x'] }] }],
    ['too_small', { ...small, release: 0 }],
    ['unrecognized_keys', { ...small, extra: 1 }],
    ['invalid_format', { ...small, published: 'today' }],
  ])('%s', (reason, value) => {
    const issues = releaseSchema.safeParse(value).error?.issues ?? [];
    const reasons = issues.map(({ code, message }) => (code === 'custom' ? message : code));
    expect(reasons).toContain(reason);
  });
});
