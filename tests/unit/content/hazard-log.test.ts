// A hazard log as small as can be against the little it names: what is told, and where.
import { describe, expect, it } from 'vitest';
import type { Content } from '../../../src/content/content.ts';
import { hazardCounts, hazardProblems, linksOf } from '../../../src/content/hazards.ts';
import { TOP, parseText } from '../../../src/content/read.ts';
import { hazardsSchema } from '../../../src/content/schema/hazards.ts';
import { loadGuide } from '../../../src/guide/load.ts';
import type { GuideNode } from '../../../src/guide/types.ts';
import { fail, ok } from '../../../src/result.ts';
import { propertyIds } from '../../../src/proof/property.ts';
import { smallSource } from '../guide/support/small.ts';

const graph = smallSource
  .replace(
    'start: danger\n',
    'start: danger\nrules: [{ page: ask, most: 1 }, { answer: ask.unsure, ends-at: [done] }]\n',
  )
  .replace('action: look\n', 'action: look\n    care: warning\n')
  .replace('urgency: none }', 'urgency: none, care: notice }');
const care = `- { id: tip, care: danger }
- { id: foil, care: warning }
- { id: dust, care: caution }
`;

const log = `fire:
  harm: It burns.
  group: Fire
  causes: [homeowner]
  severity: death
  sources: [practice, review, book]
  controls:
    pages: [small:stop-fire, small:look, care:tip]
    sentences: [site:a.b]
    rules: [most ask, ends-at ask.unsure]
    properties: [${propertyIds.filter((id) => id !== 'rules-kept').join(', ')}]
    software: [src/content/hazards.ts]
    outside-our-reach: true
  evidence:
    properties: [rules-kept]
    mutants: [change an action]
    tests: { unit/content/hazard-log.test.ts: ["is told of: %s", a row by its name] }
    bench: [note]
  residual: None.
  owner: editor
slip:
  harm: It is slippery.
  group: Office
  causes: [staff]
  severity: serious
  sources: [practice]
  controls: { pages: [care:foil] }
  evidence: { bench: [note] }
  residual: None.
  owner: office
bee:
  harm: It stings.
  group: Office
  causes: [staff]
  severity: minor
  sources: [practice]
  controls: { outside-our-reach: true }
  residual: None.
  owner: office
`;

function parsed(source: string, file: string) {
  const text = parseText(source, file);
  if (!text.ok) throw new Error(JSON.stringify(text.error));
  return text.value;
}

const loaded = loadGuide(graph, 'small.yaml');
if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
const guide = loaded.value;

const broken = [{ file: 'x', place: TOP, about: 'file', trouble: { code: 'missing' } }] as const;

/** Content with this log, the pages of the guide changed in some way. */
function contentOf(source: string, change: Partial<GuideNode> = {}): Content {
  const texts = new Map(
    Object.entries({
      'hazards.yaml': source,
      'guides/small/graph.yaml': graph,
      'blocks/shared.yaml': graph,
      'care.yaml': care,
      'text/en/site.json': '{ "a": { "b": "It is." } }',
    }).map(([file, text]) => [file, parsed(text, file)]),
  );
  const nodes = new Map([...guide.nodes].map(([id, node]) => [id, { ...node, ...change }]));
  const stub = {
    text: (path: string) => {
      const text = texts.get(path);
      return text ? ok(text) : fail(broken);
    },
    hazards: () => ok(hazardsSchema.parse(parsed(source, 'hazards.yaml').value)),
    wholeGuides: () => ok([{ ...guide, nodes }]),
    carePages: () => ok(parsed(care, 'care.yaml').value),
    sources: () => ok({ book: 'A book.' }),
  };
  return stub as unknown as Content;
}

/** Problems as a line each: file, line, column and what is wrong. */
const told = (content: Content): readonly string[] =>
  hazardProblems(content).map(({ file, place: { line, column }, trouble }) =>
    [file, line, column, ...Object.values<unknown>({ ...trouble })].join(' '),
  );
const unknown = (line: number, column: number, name: string, among: string): string =>
  `hazards.yaml ${line} ${column} name-unknown ${name} ${among}`;
const RULE = 'the rules of guides';
const PAGE = 'the pages of guides or care.yaml';
const PROPERTY = 'the properties of the proof';
const TEST = 'tests/unit/content/hazard-log.test.ts';

/** What is wrong with the log once one text in it is another. */
const slips: readonly { name: string; from: string; to: string; told: readonly string[] }[] = [
  { name: 'a row by its name', from: 'None.', to: 'None at all.', told: [] },
  { name: 'a source', from: 'book]', to: 'look]', told: [unknown(6, 31, 'look', 'sources.json')] },
  {
    name: 'a page',
    from: ' care:tip]',
    to: ' care:tip, x:y]',
    told: [unknown(8, 52, 'x:y', PAGE)],
  },
  {
    name: 'a sentence',
    from: '[site:a.b]',
    to: '[site:a, site:a.c, cite:a.b]',
    told: [
      unknown(9, 25, 'site:a.c', 'the English sentences'),
      unknown(9, 35, 'cite:a.b', 'the English sentences'),
    ],
  },
  {
    name: 'a rule',
    from: 'most ask,',
    to: 'most look,',
    told: [unknown(10, 13, 'most look', RULE)],
  },
  {
    name: 'a property among the controls',
    from: 'properties: [danger-first,',
    to: 'properties: [danger-first, danger-last,',
    told: [unknown(11, 32, 'danger-last', PROPERTY)],
  },
  {
    name: 'a file of the project',
    from: 'software: [src',
    to: 'software: [scr',
    told: [unknown(12, 16, 'scr/content/hazards.ts', 'the project')],
  },
  {
    name: 'a property among the evidence, and one without a hazard',
    from: 'properties: [rules-kept]',
    to: 'properties: [rules-bent]',
    told: [
      unknown(15, 18, 'rules-bent', PROPERTY),
      'hazards.yaml 1 1 hazard-none property rules-kept',
    ],
  },
  {
    name: 'a kind of slip',
    from: '[change an action]',
    to: '[change a thing]',
    told: [unknown(16, 15, 'change a thing', 'tests/mutants/mutants.ts')],
  },
  {
    name: 'a test',
    from: '["is told of: %s", a row by its name]',
    to: '["is told of: %d", "is told of: %s", "a row"]',
    told: [unknown(17, 48, 'is told of: %d', TEST), unknown(17, 84, 'a row', TEST)],
  },
  {
    name: 'a file of tests',
    from: 'unit/content/hazard-log.test.ts: ["is told of: %s", a row by its name]',
    to: 'unit/no.test.ts: [x]',
    told: [unknown(17, 32, 'x', 'tests/unit/no.test.ts')],
  },
  {
    name: 'a measurement',
    from: 'bench: [note]\n  residual',
    to: 'bench: [notes]\n  residual',
    told: [unknown(18, 13, 'notes', 'tests/bench')],
  },
  {
    name: 'a hazard that nothing controls',
    from: 'controls: { outside-our-reach: true }',
    to: 'controls: {}',
    told: ['hazards.yaml 31 1 hazard-open bee controls'],
  },
  {
    name: 'a hazard that nothing shows to be controlled',
    from: 'evidence: { bench: [note] }',
    to: 'evidence: {}',
    told: ['hazards.yaml 21 1 hazard-open slip evidence'],
  },
  {
    name: 'a page that warns of death and is in no grave hazard',
    from: 'severity: death',
    to: 'severity: damage',
    told: [
      'guides/small/graph.yaml 12 3 hazard-none page small:look',
      'guides/small/graph.yaml 26 3 hazard-none page small:stop-fire',
      'care.yaml 1 3 hazard-none page care:tip',
    ],
  },
  {
    name: 'a care page that warns of serious harm and is in no grave hazard',
    from: 'severity: serious',
    to: 'severity: damage',
    told: ['care.yaml 2 3 hazard-none page care:foil'],
  },
];

describe('a hazard log that names what is not there', () => {
  it.each(slips.map((slip) => [slip.name, slip] as const))('is told of: %s', (_, slip) => {
    expect(log.split(slip.from).length).toBeGreaterThan(1);
    expect(told(contentOf(log.replace(slip.from, slip.to)))).toEqual(slip.told);
  });

  it('is not looked at while a part of it is broken', () => {
    const content = contentOf(log.replace('book', 'look'));
    expect(told({ ...content, sources: () => fail(broken) })).toEqual([]);
  });

  it('leaves out pages of a file that is broken', () => {
    const content = contentOf(log.replace('severity: death', 'severity: damage'));
    const text: Content['text'] = (path) =>
      path === 'care.yaml' ? fail(broken) : content.text(path);
    expect(told({ ...content, text }).filter((one) => one.startsWith('care'))).toEqual([]);
  });

  it('names the pages of blocks as theirs', () => {
    const blocks = log.replaceAll('small:', 'blocks:');
    expect(told(contentOf(blocks, { block: 'shared' }))).toEqual([]);
    expect(told(contentOf(log, { block: 'shared' }))).toEqual([
      ...[unknown(8, 13, 'small:stop-fire', PAGE), unknown(8, 30, 'small:look', PAGE)],
      'blocks/shared.yaml 12 3 hazard-none page blocks:look',
      'blocks/shared.yaml 26 3 hazard-none page blocks:stop-fire',
    ]);
  });

  it('asks for a hazard where a stop is for a danger, whatever its box says', () => {
    const mild = contentOf(log.replace('severity: death', 'severity: damage'), {
      caution: 'notice',
    });
    expect(told(mild).filter((one) => one.startsWith('guides'))).toEqual([
      'guides/small/graph.yaml 26 3 hazard-none page small:stop-fire',
    ]);
  });

  it('is counted', () => {
    const hazards = hazardsSchema.parse(parsed(log, 'hazards.yaml').value);
    expect(hazardCounts(hazards)).toEqual({ hazards: 3, controls: 19, evidence: 6, outside: 2 });
    const [fire] = Object.values(hazards);
    if (!fire) throw new Error('no hazard');
    const links = linksOf(fire).map(({ part, kind, name }) => `${part} ${kind} ${name}`);
    expect(links.filter((one) => !one.includes('properties'))).toEqual([
      ...['small:stop-fire', 'small:look', 'care:tip'].map((one) => `control pages ${one}`),
      'control sentences site:a.b',
      ...['most ask', 'ends-at ask.unsure'].map((one) => `control rules ${one}`),
      'control software src/content/hazards.ts',
      'evidence mutants change an action',
      'evidence bench note',
      'evidence tests unit/content/hazard-log.test.ts: is told of: %s',
      'evidence tests unit/content/hazard-log.test.ts: a row by its name',
    ]);
  });
});
