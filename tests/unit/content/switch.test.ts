// A firm may switch a part of a guide off: the gates look at both copies, whichever is built.
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openContent } from '../../../src/content/content.ts';
import { currentCodebooks } from '../../../src/content/codebooks.ts';
import { demoCode } from '../../../src/content/demo-code.ts';
import type { Demo } from '../../../src/content/schema/demo.ts';
import { readCode } from '../../../src/note/read.ts';
import { freeze } from '../../../src/note/freeze.ts';
import type { GuideId, NodeId } from '../../../src/guide/types.ts';
import { copyOfContent, spoil, toldBy } from './copy.ts';

const graph = `id: spare
tracks: [main]
start: danger
blocks: { danger: { none: look } }
optional:
  short-self-clean: { pages: [more, last, done], instead: stop-spare }
rules:
  - { page: last, needs: more.yes }
  - { page: done, never-after: more.unsure }
  - { answer: look.seen, ends-at: [more] }
nodes:
  look:
    kind: question
    drawing: oven
    answers:
      seen: { to: more }
      unsure: { to: stop-spare }
  more:
    kind: question
    drawing: oven
    answers:
      'yes': { to: last }
      unsure: { to: stop-spare }
  last:
    kind: question
    drawing: oven
    answers:
      well: { to: done, flag: hum }
      unsure: { to: stop-spare }
  done: { kind: finish, urgency: none, drawing: finish }
  stop-spare: { kind: stop, urgency: soon, call: [technician], drawing: oven }
`;
const question = (...answers: string[]) => ({
  short: 'What is seen there',
  title: 'What do you see there now?',
  help: ['Look from where you stand.'],
  why: 'It tells us which way to go on.',
  answers: Object.fromEntries(answers.map((answer) => [answer, `It is like this: ${answer}`])),
});
const text = {
  look: question('seen', 'unsure'),
  more: question('yes', 'unsure'),
  last: question('well', 'unsure'),
  done: {
    short: 'All is well',
    title: 'All is well now',
    lines: ['Use it.'],
    never: ['Do not run.'],
  },
  'stop-spare': {
    short: 'Call us',
    title: 'Call us',
    now: ['Call us now.'],
    never: ['Do not run.'],
  },
};

const GUIDE = 'guides/spare/graph.yaml';
let copy = copyOfContent();
beforeEach(() => {
  copy = copyOfContent();
  mkdirSync(join(copy.folder, 'guides/spare'));
  writeFileSync(join(copy.folder, GUIDE), graph);
  writeFileSync(join(copy.folder, 'text/en/spare.json'), JSON.stringify(text));
});
afterEach(() => {
  copy.done();
});

function switchOff(): void {
  spoil(copy.folder, 'firm.yaml', 'region: US\n', 'region: US\nshort-self-clean: false\n');
}

function pages(part: 'guides' | 'wholeGuides'): string[] {
  const guides = openContent(copy.folder)[part]();
  if (!guides.ok) throw new Error(JSON.stringify(guides.error));
  const spare = guides.value.find(({ id }) => id === ('spare' as GuideId));
  return [...(spare?.nodes.values() ?? [])].filter(({ block }) => !block).map(({ id }) => id);
}

/** What a gate tells of the guide. */
function told(gate: Parameters<typeof toldBy>[0], of = GUIDE): string[] {
  return toldBy(gate, copy.folder).filter((one) => one.startsWith(`${join(copy.folder, of)}:`));
}

describe('a part of a guide that a firm may switch off', () => {
  it('is there where nothing is said', () => {
    expect(pages('guides')).toEqual(['look', 'more', 'last', 'done', 'stop-spare']);
    expect([...told('shape'), ...told('names'), ...told('sentences'), ...told('proof')]).toEqual(
      [],
    );
  });

  it('is gone where it is off, and what led to it leads to what comes instead', () => {
    switchOff();
    expect(pages('guides')).toEqual(['look', 'stop-spare']);
    expect(pages('wholeGuides')).toEqual(['look', 'more', 'last', 'done', 'stop-spare']);
    const guides = openContent(copy.folder).guides();
    const spare = guides.ok ? guides.value.find(({ id }) => String(id) === 'spare') : undefined;
    const ways = spare?.nodes.get('look' as NodeId)?.answers.map(({ id, to }) => `${id} ${to}`);
    expect(ways).toEqual(['seen stop-spare', 'unsure stop-spare']);
    // Rules about pages that are gone are gone with them; where an answer ends, too, it changes.
    expect(spare?.rules).toEqual([{ kind: 'ends-at', answer: 'look.seen', ends: ['stop-spare'] }]);
    // Sentences and models speak of all pages, whatever is off.
    expect([...told('sentences'), ...told('proof')]).toEqual([]);
  });

  it.each([true, false])('has its slips told whether it is on or not: %s', (on) => {
    if (!on) switchOff();
    spoil(copy.folder, GUIDE, 'pages: [more, last, done]', 'pages: [more, last]');
    expect(told('shape').join('\n')).toContain(
      'With "short-self-clean: false" in firm.yaml: No answer leads to done.',
    );
  });

  it.each([true, false])('is proved both ways, whether it is on or not: %s', (on) => {
    if (!on) switchOff();
    const rule = '  - { page: stop-spare, never-after: look.seen, unless: more.unsure }\n';
    spoil(copy.folder, GUIDE, 'nodes:\n', `${rule}nodes:\n`);
    const lines = told('proof').join('\n');
    expect(lines).toContain('With "short-self-clean: false" in firm.yaml: stop-spare is reached');
    // With the switch on it is reached from the last page.
    expect(lines).toMatch(/\d: stop-spare is reached after the answer look\.seen/);
  });

  it('asks a copy without it for a release of its own', () => {
    switchOff();
    expect(told('names', 'firm.yaml').join('\n')).toMatch(
      /firm\.yaml:\d+:1: "short-self-clean" is off, and release \d+ is not[^]*npm run release/,
    );
  });

  it('has codes of its own where that release is frozen', () => {
    switchOff();
    // Under another name, because a folder is read once.
    const draft = `${copy.folder}-draft`;
    symlinkSync(copy.folder, draft);
    const content = openContent(draft);
    const [guides, details, releases] = [content.guides(), content.details(), content.releases()];
    if (!guides.ok || !details.ok || !releases.ok) throw new Error('the copy does not load');
    const next = releases.value.length + 1;
    const own = freeze(guides.value, details.value, next, '2026-11-27');
    writeFileSync(join(copy.folder, `releases/${String(next)}.json`), JSON.stringify(own));
    expect(told('names', 'firm.yaml')).toEqual([]);
    const codebooks = currentCodebooks(openContent(copy.folder), new Date());
    const written = codebooks.ok ? codebooks.value.codebooks.get(next) : undefined;
    const spare = written?.guides.find(({ id }) => String(id) === 'spare');
    expect([...(spare?.nodes.keys() ?? [])].slice(0, 3)).toEqual(['danger', 'look', 'stop-spare']);
    if (!codebooks.ok) throw new Error('no codebooks');
    const answers = [
      ['danger', 'none'],
      ['look', 'seen'],
    ] as const;
    const visit: Demo = {
      ...{ id: 'x', guide: 'spare', answers: answers.map((one) => [...one]) },
      ...{ error: '', details: {}, made: '2026-11-27' },
    };
    const code = demoCode(visit, codebooks.value.codebooks);
    const reading = code.ok ? readCode(code.value, codebooks.value.codebooks) : undefined;
    expect(reading).toMatchObject({
      kind: 'exact',
      note: { release: next, journey: answers.map(([at, answer]) => ({ at, answer })) },
    });
  });
});
