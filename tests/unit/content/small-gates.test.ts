// Each gate on content as small as can be, with one thing in it that this gate alone minds.
import { afterEach, describe, expect, it } from 'vitest';
import { openContent } from '../../../src/content/content.ts';
import { checkContent, gates } from '../../../src/content/gates.ts';
import type { Gate } from '../../../src/content/gates.ts';
import type { Problem } from '../../../src/content/problem.ts';
import { regional, regionalSentence, regionalSources } from '../../../src/content/regions.ts';
import { folderOf, small } from './small.ts';
import type { Files } from './small.ts';

type Change = Readonly<Record<string, string | readonly [from: string, to: string] | undefined>>;

const opened: (() => void)[] = [];
afterEach(() => {
  for (const done of opened.splice(0)) done();
});

/** The small content with files changed, or without them. */
function changed(change: Change) {
  const files = Object.entries(change).map(([path, to]) => {
    if (to === undefined || typeof to === 'string') return [path, to] as const;
    const text = small[path] ?? '';
    expect(text.split(to[0]), path).toHaveLength(2);
    return [path, text.replace(to[0], () => to[1])] as const;
  });
  const { folder, done } = folderOf({ ...small, ...Object.fromEntries(files) });
  opened.push(done);
  return openContent(folder);
}

const line = (root: string, { file, place, about, trouble, off }: Problem): string => {
  const at = `${file}:${String(place.line)}:${String(place.column)}`;
  const facts = Object.values<unknown>({ ...trouble }).map((fact) =>
    JSON.stringify(fact, (_, one: unknown) =>
      typeof one === 'number' ? Math.round(one) : one,
    ).replaceAll('"', ''),
  );
  return [at, about, ...facts, ...(off ? [`off: ${off.join()}`] : [])]
    .join(' ')
    .replaceAll(`${root}/`, '');
};

/** What a gate says of the content with a change. */
function told(id: Gate['id'], change: Change): readonly string[] {
  const content = changed(change);
  const gate = gates.find((one) => one.id === id);
  return (gate?.check(content) ?? []).map((one) => line(content.root, one));
}

const ASIDE = 'guides/aside/graph.yaml';
const SMALL = 'guides/small/graph.yaml';
const ENGLISH = 'text/en/small.json';
const BLOCKS = 'text/en/blocks.json';
const SPANISH = 'text/es/small.json';

it('each gate asks something of its own', () => {
  expect(gates.map(({ id }) => id)).toEqual([
    ...['shape', 'names', 'sentences', 'languages', 'regions', 'hazards', 'proof'],
  ]);
  expect(new Set(gates.map(({ asks }) => asks)).size).toBe(gates.length);
  for (const { asks } of gates) expect(asks).toMatch(/^Every .+\.$/);
});

it.each(['sentences', 'languages', 'proof'] as const)('%s: nothing in it is wrong', (id) => {
  expect(told(id, {})).toEqual([]);
});

it('a problem that several parts tell of is told once', () => {
  const content = changed({ 'flags.yaml': '- bang\n- bang\n' });
  const all = checkContent(content).map((one) => line(content.root, one));
  expect(all.filter((one) => one.startsWith('flags'))).toHaveLength(1);
  expect(all.filter((one) => one.startsWith('care'))).toHaveLength(1);
});

describe('shape', () => {
  const missing = told('shape', {});

  it('tells of each part that is not there', () => {
    expect(new Set(missing)).toEqual(
      new Set(
        [
          'care.yaml',
          'demo.json',
          'details.yaml',
          'finder.yaml',
          'hazards.yaml',
          'model/faults.yaml',
        ]
          .concat(['spelling.yaml', 'recall.json', 'regions.yaml', 'reviews.yaml', 'sources.json'])
          .concat(['safety.json', 'study.yaml', 'wcag.yaml'])
          .map((file) => `${file}:1:1 file missing`),
      ),
    );
  });

  const more = (change: Change) => told('shape', change).filter((one) => !missing.includes(one));

  it.each<[string, Change, readonly string[]]>([
    [
      'a text in a folder of a folder',
      { 'text/en/map.json': '{' },
      [
        "text/en/map.json:1:2 file syntax Expected property name or '}' in JSON at position 1 (line 1 column 2)",
      ],
    ],
    [
      'a glossary',
      { 'glossaries/en.json': '{ "a": 1 }' },
      ['glossaries/en.json:1:8 file shape a Invalid input: expected object, received number'],
    ],
    ['no list of languages', { 'languages.yaml': undefined }, ['languages.yaml:1:1 file missing']],
    ['a file that is none of ours', { 'notes.txt': '{', 'a.json.txt': '{', ajson: '{' }, []],
    [
      'files named like those with a reader',
      { 'my/details.yaml': '[', 'details.yaml.json': '[' },
      [
        'details.yaml.json:1:1 file syntax Unexpected end of JSON input',
        'my/details.yaml:1:2 file syntax MISSING_CHAR',
      ],
    ],
    [
      'flags',
      { 'flags.yaml': '[' },
      [
        'flags.yaml:1:2 file syntax MISSING_CHAR',
        'flags.yaml:1:2 file syntax MISSING_CHAR',
        'flags.yaml:1:2 file syntax MISSING_CHAR',
        'flags.yaml:1:2 file syntax MISSING_CHAR',
      ],
    ],
    [
      'details',
      { 'details.yaml': '[' },
      ['details.yaml:1:2 file syntax MISSING_CHAR', 'details.yaml:1:2 file syntax MISSING_CHAR'],
    ],
    [
      'a file of the model',
      { 'model/faults.yaml': '[', 'details.yaml': 'kind: [range, oven]' },
      ['model/faults.yaml:1:2 file syntax MISSING_CHAR'],
    ],
    [
      'a block',
      { 'blocks/ends.yaml': '[' },
      [
        'blocks/ends.yaml:1:2 file syntax MISSING_CHAR',
        'blocks/ends.yaml:1:2 file syntax MISSING_CHAR',
        'blocks/ends.yaml:1:2 file syntax MISSING_CHAR',
        'blocks/ends.yaml:1:2 file syntax MISSING_CHAR',
      ],
    ],
    [
      'a guide',
      { [ASIDE]: '[' },
      [
        'guides/aside/graph.yaml:1:2 file syntax MISSING_CHAR',
        'guides/aside/graph.yaml:1:2 file syntax MISSING_CHAR',
        'guides/aside/graph.yaml:1:2 file syntax MISSING_CHAR',
      ],
    ],
  ])('%s', (_, change, expected) => {
    expect(more(change)).toEqual(expected);
  });
});

type Row = readonly [what: string, change: Change, told: readonly string[]];
const rows = (id: Gate['id'], all: readonly Row[]) => {
  it.each(all)('%s', (_, change, expected) => {
    expect(told(id, change)).toEqual(expected);
  });
};
const broken = '{';

describe('sentences', () => {
  rows('sentences', [
    [
      'a page without its words',
      { [ENGLISH]: ['"done"', '"gone"'] },
      [
        'text/en/small.json:1:1 file key-missing  done',
        'text/en/small.json:22:3 file key-unknown  gone',
      ],
    ],
    [
      'a page of a block without',
      { [BLOCKS]: ['"why": "We ask.",', ''] },
      [
        'text/en/blocks.json:2:3 file key-missing danger why',
        'text/en/blocks.json:2:3 file key-missing danger why',
      ],
    ],
    [
      'a page of a block said again',
      { 'text/en/aside.json': ['{\n  "what"', '{\n  "stop-book": {},\n  "what"'] },
      ['text/en/aside.json:2:3 file sentence-of-block aside:stop-book'],
    ],
    [
      'words for no page',
      { [BLOCKS]: ['{\n  "danger"', '{\n  "stop-none": {},\n  "danger"'] },
      ['text/en/blocks.json:2:3 file sentence-unused blocks:stop-none'],
    ],
    [
      'a guide without a name',
      { 'text/en/guides.json': ['"small"', '"large"'] },
      [
        'text/en/guides.json:2:3 file sentence-missing guides:names.small guides/small/graph.yaml:1',
      ],
    ],
    ['a guide whose words are broken', { [ENGLISH]: broken }, []],
    ['a block that is broken', { 'blocks/ends.yaml': broken }, []],
    ['sentences of blocks that are broken', { [BLOCKS]: broken }, []],
  ]);
});

describe('languages', () => {
  const words = (count: number) => JSON.stringify({ a: `${'Go on '.repeat(count / 2)}.` });
  rows('languages', [
    [
      'a refused word of a page for readers',
      { 'text/en/site.json': '{ "a": "A colour." }' },
      ['text/en/site.json:1:3 translation term-forbidden site:a colour [color] US'],
    ],
    [
      'of a page for staff',
      { 'text/en/desk.json': '{ "a": { "b": "A colour." } }' },
      ['text/en/desk.json:1:10 translation term-forbidden desk:a.b colour [color] US'],
    ],
    [
      'of the model',
      { 'text/en/model.json': '{ "a": "A colour." }' },
      ['text/en/model.json:1:3 translation term-forbidden model:a colour [color] US'],
    ],
    [
      'of a guide',
      { [ENGLISH]: ['You are done', 'A colour'] },
      ['text/en/small.json:24:5 translation term-forbidden small:done.title colour [color] US'],
    ],
    [
      'of a block',
      { [BLOCKS]: ['Get out.', 'A colour.'] },
      [
        'text/en/blocks.json:19:7 translation term-forbidden blocks:stop-fire.now.0 colour [color] US',
      ],
    ],
    [
      '21 words for readers',
      { 'text/en/site.json': words(22) },
      ['text/en/site.json:1:2 translation sentence-long site:a 22'],
    ],
    ['20 words for readers', { 'text/en/site.json': words(20) }, []],
    ['21 words for staff', { 'text/en/desk.json': words(22), 'text/en/model.json': words(22) }, []],
    [
      'a line of four sentences',
      { [BLOCKS]: ['Look. Sniff.', 'Look. Go. Sniff.'] },
      ['text/en/blocks.json:30:7 translation line-long blocks:stop-unsure.now.1 4'],
    ],
    ['a line of no guide', { 'text/en/site.json': '{ "now": ["Go. Go. Go. Go."] }' }, []],
    [
      'an English text that is broken',
      { 'text/en/site.json': broken },
      [
        "text/en/site.json:1:2 file syntax Expected property name or '}' in JSON at position 1 (line 1 column 2)",
      ],
    ],
    ['a glossary that is broken', { 'glossaries/en.json': broken }, []],
    [
      'no languages',
      { 'languages.yaml': broken },
      [
        'languages.yaml:1:2 file syntax MISSING_CHAR',
        'languages.yaml:1:2 file syntax MISSING_CHAR',
      ],
    ],
    [
      'a guide that is broken',
      { [SMALL]: broken },
      [
        'guides/small/graph.yaml:1:2 file syntax MISSING_CHAR',
        'guides/small/graph.yaml:1:2 file syntax MISSING_CHAR',
      ],
    ],
    ['the firm is broken', { 'firm.yaml': broken, [SPANISH]: undefined }, []],
    [
      'the firm speaks English alone',
      { 'firm.yaml': ['[en, es]', '[en]'], [SPANISH]: undefined },
      [],
    ],
    [
      'a language that nobody knows',
      { 'firm.yaml': ['[en, es]', '[en, xx]'] },
      ['languages.yaml:1:1 file name-unknown xx languages.yaml'],
    ],
    [
      'a file that is not there',
      { [SPANISH]: undefined },
      [
        'text/es/small.json:1:1 translation safety-missing small:done',
        'text/es/small.json:1:1 translation safety-missing small:stop-off',
      ],
    ],
    [
      'a page that is',
      { [SPANISH]: ['"done"', '"gone"'] },
      [
        'text/es/small.json:1:1 translation safety-missing small:done',
        'text/es/small.json:22:3 translation key-unknown small:gone',
      ],
    ],
    [
      'a page of a guide that is hard',
      { [SPANISH]: ['Úselo.', 'Electrodomésticos completamente desconectados.'] },
      [
        'text/es/small.json:22:3 file too-hard small/done Szigriszt Pazos, INFLESZ 0 65',
        'text/es/small.json:22:3 file too-hard small/done Fernández Huerta, corrected 7 65',
      ],
    ],
    [
      'a page of no guide that is hard',
      {
        'text/en/site.json': '{ "a": "On." }',
        'text/es/site.json': '{ "a": "Electrodomésticos desconectados." }',
      },
      [
        'text/es/site.json:1:1 file too-hard site Szigriszt Pazos, INFLESZ -169 65',
        'text/es/site.json:1:1 file too-hard site Fernández Huerta, corrected -155 65',
      ],
    ],
  ]);
});

describe('proof', () => {
  const overlap = /seen: [^]*'yes': .*/.exec(small[SMALL] ?? '')?.[0] ?? '';
  const lastAnswers = /unsure: [^]*unsure: .*/.exec(small[SMALL] ?? '')?.[0] ?? '';
  rows('proof', [
    [
      'an answer',
      {
        [SMALL]: [
          'unsure: { to: stop-book }\n  ask',
          'unsure: { to: stop-book, flag: bang }\n  ask',
        ],
      },
      [
        'guides/small/graph.yaml:16:7 proof unsure-is-no-alarm {code:unsure-flags,node:look,answer:unsure,flag:bang} small [What is it? → None,What is it? → Not sure] 0',
      ],
    ],
    [
      'a page',
      { [SMALL]: ['done: true, urgency: none', 'done: true, urgency: soon'] },
      [
        'guides/small/graph.yaml:23:3 proof done-only-when-well {code:done-urgent,node:done} small [What is it? → None,What is it? → Fine] 0',
      ],
    ],
    [
      'an answer of a page that two guides pass',
      {
        [SMALL]: [
          "'yes': { to: stop-book }\n      unsure: { to: stop-book }",
          "'yes': { to: stop-book }\n      unsure: { to: stop-book, flag: bang }",
        ],
      },
      [
        'guides/small/graph.yaml:21:7 proof unsure-is-no-alarm {code:unsure-flags,node:ask,answer:unsure,flag:bang} small [What is it? → None,What is it? → Seen,What is it? → Not sure] 0',
      ],
    ],
    [
      'two answers',
      { [SMALL]: [lastAnswers, lastAnswers.replaceAll('stop-book }', 'stop-book, flag: bang }')] },
      [
        'guides/small/graph.yaml:16:7 proof unsure-is-no-alarm {code:unsure-flags,node:look,answer:unsure,flag:bang} small [What is it? → None,What is it? → Not sure] 1',
      ],
    ],
    [
      'a page that only those come to badly who are led over to it',
      {
        [SMALL]: [
          overlap,
          overlap
            .replace(', sets: [error-seen]', '')
            .replace("yes': { to: stop-book", "yes': { to: done"),
        ],
      },
      [
        'guides/small/graph.yaml:23:3 proof done-only-when-well {code:done-despite,node:small/done,fact:error-seen} aside [What is it? → None,What is it? → Shown,What is it? → Yes] 0',
      ],
    ],
    [
      'an answer of a block',
      { 'blocks/danger.yaml': ['to: stop-unsure }', 'to: stop-unsure, flag: bang }'] },
      [
        'blocks/danger.yaml:7:7 proof unsure-is-no-alarm {code:unsure-flags,node:danger,answer:unsure,flag:bang} aside [What is it? → Not sure] 0',
        'blocks/danger.yaml:7:7 proof unsure-is-no-alarm {code:unsure-flags,node:danger,answer:unsure,flag:bang} small [What is it? → Not sure] 0',
      ],
    ],
    [
      'a page of a block',
      {
        'blocks/danger.yaml': [
          'call: [emergency] }\n  stop-unsure',
          'call: [technician] }\n  stop-unsure',
        ],
      },
      [
        'blocks/danger.yaml:6:7 proof danger-first {code:not-own-stop,node:danger,answer:fire} aside [What is it? → Fire] 0',
        'blocks/danger.yaml:9:3 proof stops-call-and-warn {code:emergency-not-first,node:stop-fire} aside [What is it? → Fire] 0',
        'blocks/danger.yaml:6:7 proof danger-first {code:not-own-stop,node:danger,answer:fire} small [What is it? → Fire] 0',
        'blocks/danger.yaml:9:3 proof stops-call-and-warn {code:emergency-not-first,node:stop-fire} small [What is it? → Fire] 0',
      ],
    ],
    [
      'a stop of a block',
      { 'blocks/danger.yaml': ['danger: unsure', 'danger: smoke'] },
      [
        'blocks/danger.yaml:10:3 proof danger-first {code:danger-unasked,node:stop-unsure,answer:smoke} aside [] 1',
        'blocks/danger.yaml:10:3 proof danger-first {code:danger-unasked,node:stop-unsure,answer:smoke} small [] 1',
      ],
    ],
    [
      'an exit of a block',
      { [ASIDE]: ['nodes:', 'rules: [{ answer: danger.none, ends-at: [stop-book] }]\nnodes:'] },
      [
        'guides/aside/graph.yaml:4:21 proof rules-kept {code:ends-elsewhere,node:danger,answer:none,ends:[stop-book]} aside [What is it? → None] 0',
      ],
    ],
    [
      'where a switch is off',
      { [SMALL]: ['instead: stop-book', 'instead: done'] },
      [
        'guides/small/graph.yaml:23:3 proof done-only-when-well {code:done-despite,node:done,fact:trouble-seen} small [What is it? → None,What is it? → Hot] 0 off: short-self-clean',
      ],
    ],
    [
      'a page that is hard',
      { [ENGLISH]: ['Use it.', 'Electrical appliances necessitate authorized representatives.'] },
      [
        'text/en/small.json:22:3 proof sentences-plain {code:too-hard,node:done,grade:14,most:6} small [What is it? → None,What is it? → Fine] 0',
      ],
    ],
    [
      'a page of a block that is hard',
      { [BLOCKS]: ['Get out.', 'Electrical appliances necessitate authorized representatives.'] },
      [
        'text/en/blocks.json:12:3 proof sentences-plain {code:too-hard,node:stop-fire,grade:14,most:6} aside [What is it? → Fire] 0',
        'text/en/blocks.json:12:3 proof sentences-plain {code:too-hard,node:stop-fire,grade:14,most:6} small [What is it? → Fire] 0',
      ],
    ],
    ['words that are broken', { [BLOCKS]: broken }, []],
    ['a guide that is broken', { [SMALL]: broken }, []],
  ]);
});

describe('regions', () => {
  const region = {
    ...{ emergency: ['911'], temperature: 'F' as const, never: [] },
    say: { book: 'notes', 'book of maps': 'atlas', 'Poison Help': 'the center', 'a.b': 'dots' },
    sources: { here: 'Theirs.', both: 'same', none: 'practice' },
  };
  it('say the longest phrase, in whole words, at the head of a sentence too', () => {
    const sentence = regionalSentence(region);
    expect(sentence('Book of maps, book, notebook, books.')).toBe('Atlas, notes, notebook, books.');
    expect(sentence('Poison Help, poison help')).toBe('the center, poison help');
    expect(sentence('a.b, acb, A.b, BOOK')).toBe('dots, acb, Dots, BOOK');
    expect(regionalSentence({ ...region, say: {} })('A book.')).toBe('A book.');
  });
  it('say so in lists too, and cite no source that is none there', () => {
    const text = { list: ['A book.', 7], none: [null], from: 'book' };
    const said = { list: ['A notes.', 7], none: [null] };
    expect(regional(text, region)).toEqual({ ...said, from: 'book' });
    expect(regional({ from: 'none' }, region)).toEqual({ from: 'practice' });
    expect(regional({ from: 'here' }, region)).toEqual({ from: 'here' });
    const cited = { here: 'Ours.', both: 'Both.', none: 'No.', left: 'Left.' };
    const own = { ...cited, here: 'Theirs.', none: 'practice' };
    expect(regionalSources(cited, region)).toEqual(own);
  });
  const regions = {
    'regions.yaml': `US: { emergency: ['911'], temperature: F }
CA:
  emergency: ['911']
  temperature: F
  say: { 4 inches: 10 cm, book: notes }
  never: ['\\p{L}nches\\b', '1-800']
  sources: { book: practice }
`,
    'sources.json': '{ "book": "A book." }',
    'text/en/site.json': '{ "a": { "b": "4 inches off." }, "c": "Book of it, from: book" }',
  };
  const among = (change: Change): Change => ({ ...regions, ...change });
  const known: Files = { ...small, ...regions };
  const of = (file: string, from: string, to: string): Change => {
    const text = known[file] ?? '';
    expect(text.split(from), file).toHaveLength(2);
    return among({ [file]: text.replace(from, () => to) });
  };
  rows('regions', [
    ['nothing is wrong', among({}), []],
    [
      'a unit',
      of('text/en/site.json', '4 inches', '5 inches'),
      [
        'text/en/site.json:1:15 file region-word CA inches',
        'regions.yaml:5:10 file region-phrase 4 inches',
      ],
    ],
    [
      'a phrase that no sentence has',
      of('regions.yaml', 'book: notes', 'books: notes'),
      ['regions.yaml:5:27 file region-phrase books'],
    ],
    [
      'a source that is not cited anew',
      of('regions.yaml', '{ book: practice }', '{}'),
      ['regions.yaml:7:3 file key-missing CA.sources book'],
    ],
    [
      'a source that is none',
      of('regions.yaml', 'practice }', 'practice, look: same }'),
      ['regions.yaml:7:30 file name-unknown look sources.json'],
    ],
    [
      'a region that is none',
      of('firm.yaml', 'region: US', 'region: FR'),
      ['firm.yaml:7:9 file name-unknown FR regions.yaml, which has US, CA'],
    ],
    [
      'an emergency number of another',
      of('firm.yaml', "'911', dial: '911'", "'112', dial: '112'"),
      ['firm.yaml:11:35 file region-emergency US [911]'],
    ],
    [
      'a language in another region',
      of('firm.yaml', 'region: US', 'region: CA'),
      ['firm.yaml:8:17 file region-language CA es'],
    ],
    [
      'a number of another region',
      among({
        'firm.yaml': (small['firm.yaml'] ?? '')
          .replace('region: US', 'region: CA')
          .replace('[en, es]', '[en]')
          .replace('area: here', 'area: 1-800 here'),
      }),
      ['firm.yaml:5:7 file region-word CA 1-800'],
    ],
    [
      'its own name',
      among({
        'regions.yaml': regions['regions.yaml'].replace("'1-800'", 'CA'),
        'firm.yaml': (small['firm.yaml'] ?? '')
          .replace('region: US', 'region: CA')
          .replace('[en, es]', '[en]'),
      }),
      [],
    ],
    ['regions that are broken', among({ 'regions.yaml': broken }), []],
    ['guides that are broken', among({ [SMALL]: broken }), []],
    ['a text that is broken', among({ [ENGLISH]: broken }), []],
    ['sources that are broken', among({ 'sources.json': broken }), []],
    ['languages that are broken', among({ 'languages.yaml': broken }), []],
    ['a firm that is broken', among({ 'firm.yaml': broken }), []],
  ]);
});

describe('names', () => {
  const text = (value: unknown): string => JSON.stringify(value);
  const frozen = (flag: string, track?: string) => ({
    ...{ release: 1, published: '2026-01-01', details: [] },
    guides: [
      {
        ...{ id: 'small', start: 'danger', exits: [['fire', 'stop-fire']] },
        nodes: [
          {
            id: 'danger',
            kind: 'question',
            track,
            answers: [
              ['fire', 'stop-fire'],
              ['none', 'look'],
            ],
          },
          {
            id: 'look',
            kind: 'question',
            track,
            answers: [['fine', 'done']],
            marks: { answers: { fine: { flag } } },
          },
          { id: 'stop-fire', kind: 'stop', urgency: 'emergency' },
          { id: 'done', kind: 'finish', urgency: 'none', marks: { flag } },
        ],
      },
    ],
  });
  const claim = [{ text: 'So.', from: 'book' }];
  const topic = {
    title: 'Tip',
    lead: 'Do.',
    do: claim,
    never: claim,
    why: [{ text: 'So.', from: 'practice' }],
  };
  const beside: Files = {
    'details.yaml': 'kind: [range, oven]',
    'releases/1.json': text(frozen('bang', 'main')),
    'care.yaml': `- { id: tip, drawing: fire, care: danger, from: [small/look, '*/danger', '*/what'] }`,
    'text/en/care.json': text({ topics: { tip: topic } }),
    'sources.json': '{ "book": "A book." }',
    'finder.yaml': `main: small
groups: [{ id: all, sayings: [{ id: a, guide: small, answer: look.seen }, { id: b, guide: none }] }]`,
    'reviews.yaml': `[{ guide: small, hash: 0123456789ab, reviewer: A, role: B, date: '2026-01-01' }]`,
    'recall.json': '{ "least": 1, "pages": ["/", "/small/", "/small/look/", "/aside/what/"] }',
    'demo.json': text([
      {
        id: 'a',
        guide: 'small',
        answers: [
          ['danger', 'none'],
          ['look', 'fine'],
        ],
        made: '2026-01-02',
      },
    ]),
  };
  const known: Files = { ...small, ...beside };
  const of = (
    ...changes: readonly (readonly [file: string, from: string, to: string])[]
  ): Change => ({
    ...beside,
    ...Object.fromEntries(
      changes.map(([file, from, to]) => {
        expect((known[file] ?? '').split(from), file).toHaveLength(2);
        return [file, (known[file] ?? '').replace(from, () => to)];
      }),
    ),
  });
  const also = (change: Change): Change => ({ ...beside, ...change });
  const FIRM = 'firm.yaml';
  rows('names', [
    ['nothing is wrong', also({}), []],
    [
      'a drawing of a page',
      of([SMALL, 'done: true', 'done: true, drawing: nowhere']),
      ['guides/small/graph.yaml:23:46 file name-unknown nowhere.svg src/site/drawings'],
    ],
    [
      'a drawing of an answer',
      of([SMALL, 'fine: { to: done', 'fine: { to: done, drawing: nowhere']),
      ['guides/small/graph.yaml:14:34 file name-unknown nowhere.svg src/site/drawings/answers'],
    ],
    [
      'an answer’s drawing that is there',
      of([SMALL, 'fine: { to: done', 'fine: { to: done, drawing: lever-slides']),
      [],
    ],
    [
      'a drawing of a block',
      of(['blocks/ends.yaml', 'call: [technician]', 'call: [technician], drawing: nowhere']),
      ['blocks/ends.yaml:2:72 file name-unknown nowhere.svg src/site/drawings'],
    ],
    [
      'a drawing of a care page',
      of(['care.yaml', 'fire', 'nowhere']),
      ['care.yaml:1:23 file name-unknown nowhere.svg src/site/drawings'],
    ],
    [
      'a deed drawn on a stop',
      of([SMALL, 'stop-off: { kind: stop', 'stop-off: { kind: stop, drawing: press']),
      ['guides/small/graph.yaml:22:36 file drawing-does press'],
    ],
    [
      'none drawn there',
      of([SMALL, 'stop-off: { kind: stop', 'stop-off: { kind: stop, drawing: fire']),
      [],
    ],
    [
      'a deed drawn where it is asked about',
      of([
        SMALL,
        'kind: question\n    answers:\n      seen',
        'kind: question\n    drawing: press\n    answers:\n      seen',
      ]),
      [],
    ],
    [
      'the deed of a step',
      of([
        SMALL,
        'ask:\n    kind: question',
        'ask:\n    kind: step\n    action: press-key\n    drawing: press',
      ]),
      [],
    ],
    [
      'another deed than the step’s',
      of([
        SMALL,
        'ask:\n    kind: question',
        'ask:\n    kind: step\n    action: look\n    drawing: press',
      ]),
      ['guides/small/graph.yaml:20:14 file drawing-does press'],
    ],
    [
      'a page of a block that no guide takes',
      of([
        'blocks/ends.yaml',
        'nodes:\n',
        'nodes:\n  stop-x: { kind: stop, urgency: soon, call: [technician] }\n',
      ]),
      ['blocks/ends.yaml:2:3 guide node-unreachable stop-x'],
    ],
    [
      'a flag that nothing raises',
      of(['flags.yaml', '- bang\n', '- bang\n- boom\n']),
      ['flags.yaml:2:3 file flag-unused boom'],
    ],
    [
      'flags of a stop',
      also({
        [SMALL]: (small[SMALL] ?? '').replace('stop-off: {', 'stop-off: { flag: boom,'),
        'flags.yaml': '- bang\n- boom\n',
      }),
      [],
    ],
    [
      'a flag of a release',
      also({ 'releases/1.json': text(frozen('boom', 'main')) }),
      [
        'releases/1.json:1:340 file name-unknown boom flags.yaml',
        'releases/1.json:1:468 file name-unknown boom flags.yaml',
      ],
    ],
    [
      'an old guide of which nothing is kept',
      also({ 'releases/1.json': text(frozen('bang')) }),
      ['retired.json:1:1 file key-missing  small'],
    ],
    [
      'what is kept of none',
      also({
        'releases/1.json': text(frozen('bang')),
        'retired.json': text({
          small: {
            tracks: ['main'],
            pages: { look: { flag: 'boom', answers: { fine: {}, lost: {} } }, gone: {} },
          },
          other: { tracks: ['main'], pages: {} },
        }),
      }),
      [
        'retired.json:1:53 file name-unknown boom flags.yaml',
        'retired.json:1:81 file name-unknown small.look.lost the old releases',
        'retired.json:1:93 file name-unknown small.gone the old releases',
        'retired.json:1:105 file name-unknown other the old releases',
      ],
    ],
    [
      'a switch that no release knows of',
      of([FIRM, 'region: US', 'region: US\nshort-self-clean: false']),
      ['firm.yaml:8:1 file release-of-others 1 short-self-clean'],
    ],
    [
      'a saying’s answer',
      of(['finder.yaml', 'look.seen', 'look.none']),
      ['finder.yaml:2:62 file name-unknown look.none the first answers of small'],
    ],
    [
      'a saying’s answer behind no first page',
      of(['finder.yaml', 'look.seen', 'ask.yes']),
      ['finder.yaml:2:62 file name-unknown ask.yes the first answers of small'],
    ],
    [
      'a language',
      of([FIRM, '[en, es]', '[en, xx, es, yy]']),
      [
        'firm.yaml:8:17 file name-unknown xx languages.yaml',
        'firm.yaml:8:25 file name-unknown yy languages.yaml',
      ],
    ],
    [
      'a first language without staff',
      of([FIRM, '[en, es]', '[es, en]']),
      ['firm.yaml:8:13 file staff-language-first es'],
    ],
    [
      'an area not said in each language',
      of([FIRM, 'area: here', 'area: { en: here }\ncall-out: { es: aquí }']),
      ['firm.yaml:5:1 file key-missing area es', 'firm.yaml:6:1 file key-missing call-out en'],
    ],
    [
      'a pale color',
      of([FIRM, 'region: US', "region: US\ncolors: { light: '#e8e8e8', dark: '#9cc9ee' }"]),
      [
        'firm.yaml:8:18 file light paper 1 color-pale',
        'firm.yaml:8:18 file light card 1 color-pale',
        'firm.yaml:8:18 file light accent-ink 1 color-pale',
      ],
    ],
    [
      'a logo that is not there',
      of([FIRM, 'region: US', 'region: US\nlogo: x.svg']),
      ['firm.yaml:8:7 file name-unknown x.svg the folder content'],
    ],
    [
      'a logo as heavy as it may be',
      { ...of([FIRM, 'region: US', 'region: US\nlogo: x.svg']), 'x.svg': 'x'.repeat(4000) },
      [],
    ],
    [
      'a logo that is heavier',
      { ...of([FIRM, 'region: US', 'region: US\nlogo: x.svg']), 'x.svg': 'x'.repeat(4001) },
      ['firm.yaml:8:7 file logo-heavy 4001 4000'],
    ],
    [
      'a page that leads to care',
      of(['care.yaml', 'small/look', 'aside/look']),
      ['care.yaml:1:50 file name-unknown aside/look the guides’ pages'],
    ],
    [
      'a care page without words',
      of(['text/en/care.json', 'tip', 'top']),
      [
        'text/en/care.json:1:2 file key-missing topics tip',
        'text/en/care.json:1:12 file key-unknown topics top',
      ],
    ],
    [
      'a source',
      of(['sources.json', '"book"', '"look"']),
      [
        'text/en/care.json:1:73 file name-unknown book sources.json',
        'text/en/care.json:1:112 file name-unknown book sources.json',
      ],
    ],
    [
      'a guide that someone signed',
      of(['reviews.yaml', 'small', 'smell']),
      ['reviews.yaml:1:11 file name-unknown smell guides'],
    ],
    [
      'a recall above all releases',
      of(['recall.json', '1', '2']),
      ['recall.json:1:12 file recall-above 2 1'],
    ],
    [
      'a recall of pages that never were',
      of(['recall.json', '"/"', '"/", "/none/", "/small/none/", "/small/stop-fire/"']),
      [
        'recall.json:1:30 file recall-page /none/ 1',
        'recall.json:1:40 file recall-page /small/none/ 2',
      ],
    ],
    [
      'a visit that no code can be written for',
      of(['demo.json', 'fine', 'fin']),
      [
        'demo.json:1:2 file demo-broken a {\\code\\:\\not-a-journey\\,\\step\\:1,\\at\\:\\look\\,\\answer\\:\\fin\\}',
      ],
    ],
    [
      'all that is broken is passed over',
      also(Object.fromEntries(Object.keys(beside).map((file) => [file, '[']))),
      [],
    ],
  ]);
});
