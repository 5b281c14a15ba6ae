import { describe, expect, it } from 'vitest';
import { tellTrouble } from '../../../src/content/guide-words.ts';
import { loadBlocks, unusedOfBlocks } from '../../../src/guide/blocks.ts';
import type { Blocks } from '../../../src/guide/blocks.ts';
import { loadGuide } from '../../../src/guide/load.ts';
import { loadGuides } from '../../../src/guide/load-guides.ts';
import type { BlockTrouble, GuideProblem } from '../../../src/guide/problem.ts';
import type { NodeId } from '../../../src/guide/types.ts';
import type { Result } from '../../../src/result.ts';
import { smallBlocks, takingSource } from './support/small.ts';

type Files = Readonly<Record<string, string>>;

function read(files: Files, flags?: readonly string[]) {
  const list = Object.entries(files).map(([id, source]) => ({ source, file: `blocks/${id}.yaml` }));
  return loadBlocks(list, flags);
}

function blocksOf(files: Files): Blocks {
  const loaded = read(files);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
}

const blocks = blocksOf(smallBlocks);

function guideOf(source: string, from: Blocks = blocks) {
  const loaded = loadGuide(source, 'graph.yaml', from);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
}

/** A text with another in place of one, which stands there once. */
function edited(text: string, from: string, to: string): string {
  if (text.split(from).length !== 2) throw new Error(`Not there once: ${from}`);
  return text.replace(from, () => to);
}

/** What is wrong by one code, with its place in the file. */
function toldOf(
  loaded: Result<unknown, readonly GuideProblem[]>,
  code: GuideProblem['code'],
  of = 'graph.yaml',
) {
  return (loaded.ok ? [] : loaded.error)
    .filter((problem) => problem.code === code && problem.file === of)
    .map((problem) => ({ ...problem, at: `${problem.place.line}:${problem.place.column}` }));
}

const WIRED = '{ to: { a: done, b: ask } }';

describe('a guide that takes pages of blocks', () => {
  const guide = guideOf(takingSource);
  const ways = (id: string, of = guide) =>
    of.nodes.get(id as NodeId)?.answers.map((answer) => `${answer.id} ${answer.to}`);

  it('has those it comes to, the start first, its own next, then by block and place', () => {
    expect([...guide.nodes.keys()]).toEqual([
      ...['danger', 'look', 'ask-b', 'done'],
      ...['wait', 'wait-b', 'near', 'near-b', 'stop-fire', 'stop-wait'],
    ]);
    expect(guide.start).toBe('danger');
    expect(guide.exits.map(({ id }) => String(id))).toEqual(['fire']);
  });

  it('says which block a page is of, and nothing of its own pages', () => {
    const of = (id: string) => guide.nodes.get(id as NodeId)?.block;
    expect(['danger', 'near-b', 'stop-wait', 'ask-b'].map(of)).toEqual([
      ...['danger', 'cool-down', 'endings', undefined],
    ]);
  });

  it('goes on from exits as it says, on each track', () => {
    expect(ways('danger')).toEqual(['fire stop-fire', 'unsure stop-fire', 'none look']);
    expect(ways('near')).toEqual(['cool done', 'warm wait', 'unsure wait']);
    expect(ways('near-b')).toEqual(['cool ask-b', 'warm wait-b', 'unsure wait-b']);
    expect(guide.nodes.get('near' as NodeId)?.answers[0]?.sets).toEqual(['cooled']);
    const moving = guideOf(edited(takingSource, WIRED, '{ to: ask, track: { a: b } }'));
    expect(ways('near', moving)).toEqual(['cool ask-b', 'warm wait', 'unsure wait']);
  });

  it('is held to the rules of blocks whose pages it has, and to its own', () => {
    expect(guide.rules).toEqual([
      { kind: 'most', page: 'ask', most: 1 },
      { kind: 'needs', page: 'wait', answer: 'near.warm' },
      { kind: 'ends-at', answer: 'near.unsure', ends: ['wait', 'stop-later'] },
    ]);
  });

  it('comes to pages of other blocks by where an exit leads', () => {
    const direct = `id: direct
tracks: [a]
start: danger
blocks: { danger: { none: open }, cool-down: { opened: stop-wait } }
nodes: {}
`;
    expect([...guideOf(direct).nodes.keys()]).toEqual([
      ...['danger', 'open', 'stop-fire', 'stop-wait', 'stop-later'],
    ]);
  });

  it('can do without a block’s page where a switch is off', () => {
    const optional = 'optional: { short-self-clean: { pages: [wait], instead: stop-wait } }';
    const source = edited(takingSource, 'rules:', `${optional}\nrules:`);
    const loaded = loadGuide(source, 'graph.yaml', blocks, new Set(['short-self-clean']));
    if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
    expect(ways('near', loaded.value)).toEqual(['cool done', 'warm stop-wait', 'unsure stop-wait']);
    expect([...loaded.value.nodes.keys()]).not.toContain('wait');
    expect(loaded.value.rules).toContainEqual(
      expect.objectContaining({ answer: 'near.unsure', ends: ['stop-wait', 'stop-later'] }),
    );
    expect([...guideOf(source).nodes.keys()]).toEqual([...guide.nodes.keys()]);
  });

  it('is held to a rule whose exception it does not have', () => {
    const rule = '  - { page: wait, never-after: near.cool, unless: open.opened }\n';
    const more = edited(smallBlocks['cool-down'], 'rules:\n', `rules:\n${rule}`);
    const held = guideOf(takingSource, blocksOf({ ...smallBlocks, 'cool-down': more })).rules;
    expect(held).toContainEqual({
      ...{ kind: 'never-after', page: 'wait', answer: 'near.cool', unless: 'open.opened' },
    });
  });

  it('may lead from an exit into another guide', () => {
    const there = takingSource.replace('id: taking', 'id: there\nentries: [ask]');
    const here = `id: here
tracks: [one]
start: danger
blocks: { danger: { none: near }, cool-down: { cool: { to: there/ask, track: b } } }
nodes: {}
`;
    const loaded = loadGuides(
      [here, there].map((source, index) => ({ source, file: `${index}.yaml` })),
      blocks,
    );
    if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
    expect(ways('near', loaded.value[0])?.[0]).toBe('cool there/ask-b');
  });

  it('may borrow the sentences of a block’s page it does not come to', () => {
    const own = edited(takingSource, '  ask:\n    kind', '  ask:\n    text: open\n    kind');
    const guide = guideOf(edited(own, 'page: ask', 'page: open'));
    expect(guide.nodes.get('ask-b' as NodeId)?.sentences).toBe('open');
  });
});

interface Slip {
  readonly code: GuideProblem['code'];
  readonly from: string;
  readonly to: string;
  readonly at: string;
  readonly facts?: object;
}

const inGuide: readonly Slip[] = [
  {
    ...{ code: 'page-of-block', from: '  done: {', to: '  open: {', at: '21:3' },
    facts: { node: 'open', block: 'cool-down' },
  },
  {
    ...{ code: 'block-unknown', from: '  danger: {', to: '  dagner: {}\n  danger: {', at: '5:3' },
    facts: { block: 'dagner', known: ['cool-down', 'danger', 'endings'] },
  },
  {
    ...{ code: 'exit-unknown', from: '{ cool: {', to: '{ col: done, cool: {', at: '6:16' },
    facts: { block: 'cool-down', exit: 'col', known: ['cool', 'opened'] },
  },
  {
    ...{ code: 'exit-unused', from: '{ cool: {', to: '{ opened: done, cool: {', at: '6:16' },
    facts: { block: 'cool-down', exit: 'opened' },
  },
  {
    ...{ code: 'exit-unwired', from: '{ none: look }', to: '{}', at: '5:3' },
    facts: { block: 'danger', exit: 'none', node: 'danger', answer: 'none' },
  },
  // What any guide can get wrong shows at the entry, too.
  { code: 'target-unknown', from: 'none: look', to: 'none: lok', at: '5:19' },
  { code: 'target-missing', from: 'a: done, b: ask', to: 'a: done', at: '6:28' },
  { code: 'track-unknown', from: WIRED, to: '{ to: ask, track: c }', at: '6:40' },
  { code: 'value-wrong', from: 'none: look', to: 'none: Look', at: '5:19' },
  { code: 'loop', from: 'a: done, b: ask', to: 'a: look, b: ask', at: '10:3' },
];

describe('a guide that takes them wrongly is told at its own entry', () => {
  it.each(inGuide)('$code', ({ code, from, to, at, facts = {} }) => {
    const loaded = loadGuide(edited(takingSource, from, to), 'graph.yaml', blocks);
    expect(toldOf(loaded, code)).toContainEqual(expect.objectContaining({ ...facts, at }));
  });
});

const inBlock: readonly (Slip & { readonly block: keyof typeof smallBlocks })[] = [
  {
    ...{ block: 'endings', code: 'page-repeated', from: 'stop-later:', to: 'open:', at: '3:3' },
    facts: { node: 'open', block: 'cool-down' },
  },
  {
    ...{ block: 'danger', code: 'exit-unknown', from: 'exit/none', to: 'exit/nnoe', at: '8:19' },
    facts: { block: 'danger', exit: 'nnoe', known: ['none'] },
  },
  {
    ...{ block: 'danger', code: 'exit-unused', from: '[none]', to: '[none, more]', at: '1:15' },
    facts: { block: 'danger', exit: 'more' },
  },
  {
    ...{ block: 'cool-down', code: 'target-unknown', from: 'warm: { to: wait }', at: '17:19' },
    ...{ to: 'warm: { to: wiat }', facts: { node: 'near', answer: 'warm', target: 'wiat' } },
  },
  {
    ...{ block: 'cool-down', code: 'target-unknown', from: 'warm: { to: wait }', at: '17:19' },
    ...{ to: 'warm: { to: other/wait }', facts: { target: 'other/wait' } },
  },
  {
    ...{ block: 'cool-down', code: 'key-unknown', from: 'warm: { to: wait }', at: '17:25' },
    ...{ to: 'warm: { to: wait, track: a }', facts: { key: 'track' } },
  },
  {
    ...{ block: 'cool-down', code: 'value-wrong', from: 'warm: { to: wait }', at: '17:19' },
    ...{ to: 'warm: { to: { a: wait } }', facts: {} },
  },
  {
    ...{ block: 'cool-down', code: 'key-unknown', from: '  open:\n', to: '  open:\n    only: a\n' },
    ...{ at: '20:5', facts: { key: 'only' } },
  },
  { block: 'cool-down', code: 'rule-unknown', from: 'page: open', to: 'page: opne', at: '5:13' },
  {
    ...{ block: 'cool-down', code: 'flag-unknown', from: 'warm: { to: wait }', at: '17:31' },
    ...{ to: 'warm: { to: wait, flag: hmu }', facts: { flag: 'hmu', known: ['hum'] } },
  },
  { block: 'danger', code: 'unsure-missing', from: 'unsure: {', to: 'never: {', at: '5:5' },
  { block: 'danger', code: 'yaml-syntax', from: '[none]', to: '[none', at: '2:1' },
];

describe('a guide whose frame is broken', () => {
  it('is not told of exits besides, which nothing is known of', () => {
    const broken = edited(takingSource, 'none: look', 'none: Look');
    const loaded = loadGuide(broken, 'graph.yaml', blocks);
    expect((loaded.ok ? [] : loaded.error).map(({ code }) => code)).toEqual(['value-wrong']);
  });
});

describe('blocks are checked by themselves, at the places of their own files', () => {
  it('and have nothing wrong', () => {
    expect(read(smallBlocks, ['hum']).ok).toBe(true);
  });

  it.each(inBlock)('$code', ({ block, code, from, to, at, facts = {} }) => {
    const files = { ...smallBlocks, [block]: edited(smallBlocks[block], from, to) };
    expect(toldOf(read(files, ['hum']), code, `blocks/${block}.yaml`)).toContainEqual(
      expect.objectContaining({ ...facts, at }),
    );
  });

  it('and told where no guide has their pages or keeps their rules', () => {
    const unused = unusedOfBlocks(blocks, [guideOf(takingSource)]);
    expect(unused.map(({ file, place: { line }, code }) => `${file}:${line} ${code}`)).toEqual([
      'blocks/cool-down.yaml:5 rule-unused',
      'blocks/cool-down.yaml:19 node-unreachable',
      'blocks/endings.yaml:3 node-unreachable',
    ]);
  });
});

describe('the words for what is wrong with blocks', () => {
  it('are there for each kind of trouble, which was shown above', () => {
    const all: Record<BlockTrouble['code'], true> = {
      ...{ 'page-of-block': true, 'page-repeated': true, 'block-unknown': true },
      ...{ 'exit-unknown': true, 'exit-unwired': true, 'exit-unused': true, 'rule-unused': true },
    };
    const shown = new Set<string>([...inGuide, ...inBlock].map(({ code }) => code));
    expect(Object.keys(all).filter((code) => !shown.has(code))).toEqual(['rule-unused']);
    const facts = { node: 'near', block: 'cool-down', exit: 'cool', answer: 'cold', known: ['k'] };
    for (const code of Object.keys(all)) {
      const { what, hint } = tellTrouble({ code, ...facts } as unknown as BlockTrouble);
      expect(`${what}${hint}`).not.toMatch(/undefined|object/);
      expect(what).toContain('cool-down');
    }
  });
});
