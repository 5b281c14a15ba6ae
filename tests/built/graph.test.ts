// The proof speaks of the compiled guides; readers meet pages. Here every page of every language is
// read from its HTML and compared with the model, so that what was proved is what is served.
import { beforeAll, describe, expect, it } from 'vitest';
import { guides } from '../../src/content/load.ts';
import { languages } from '../../src/content/load.ts';
import { ownNodes } from '../../src/guide/ids.ts';
import {
  addressIn,
  differences,
  modelPage,
  readPage,
  type GuidePage,
} from './support/guide-page.ts';
import { addressOf, pageFiles, textOf } from './support/html.ts';

const pages = new Map<string, GuidePage>();
const models = new Map<string, GuidePage>();

beforeAll(() => {
  for (const file of pageFiles()) {
    const page = readPage(textOf(file), addressOf(file));
    if (page) pages.set(addressOf(file), page);
  }
  for (const language of languages())
    for (const guide of guides())
      for (const node of ownNodes(guide))
        models.set(
          addressIn(language, `${guide.id}/${node.id}/`),
          modelPage(language, guide, node),
        );
});

const sum = (
  of: Iterable<GuidePage>,
  part: 'answers' | 'exits' | 'note' | 'cautions' | 'calls' | 'timers',
) => [...of].reduce((total, page) => total + page[part].length, 0);

describe('the built guides', () => {
  it('are the compiled ones: every page, link, kind, caution, number and timer', () => {
    expect([...pages.keys()].toSorted()).toEqual([...models.keys()].toSorted());
    const found = [...models].flatMap(([address, model]) => {
      const page = pages.get(address);
      return page ? differences(page, model) : [`${address}: no page`];
    });
    expect(found).toEqual([]);
  });

  it('are all there, counted from the guides alone', () => {
    const per = (count: (guide: ReturnType<typeof guides>[number]) => number) =>
      languages().length * guides().reduce((total, guide) => total + count(guide), 0);
    const meant = {
      pages: per((guide) => ownNodes(guide).length),
      answers: per((guide) => ownNodes(guide).flatMap(({ answers }) => answers).length),
      exits: per((guide) => ownNodes(guide).length * guide.exits.length),
      calls: per((guide) => ownNodes(guide).flatMap(({ call }) => call).length),
      timers: per((guide) => ownNodes(guide).filter(({ timer }) => timer).length),
      note: per((guide) => ownNodes(guide).filter(({ answers }) => answers.length === 0).length),
    };
    const parts = ['answers', 'exits', 'calls', 'timers', 'note'] as const;
    const counted = {
      pages: pages.size,
      ...Object.fromEntries(parts.map((part) => [part, sum(pages.values(), part)])),
    };
    expect(counted).toEqual(meant);
    for (const [part, count] of Object.entries(meant)) expect(count, part).toBeGreaterThan(0);
    const cautions = sum(pages.values(), 'cautions');
    expect(cautions).toBeGreaterThan(0);
    console.log(
      JSON.stringify({ ...counted, cautions, languages: languages().length, differences: 0 }),
    );
  });

  it.each<[keyof GuidePage, string, RegExp, string]>([
    ['answers', 'door-locked/near', /(data-answer="heat")/, 'data-answer="quiet"'],
    ['answers', 'door-locked/near', /href="[^"]*"(?=[^>]*data-answer="heat")/, 'href="../inside/"'],
    ['exits', 'door-locked/near', /href="[^"]*"(?=[^>]*data-exit)/, 'href="../danger/"'],
    ['exits', 'door-locked/near', /data-exit="[^"]*"/, ''],
    ['kind', 'door-locked/near', /class="page question/, 'class="page step'],
    ['timers', 'door-locked/wait', /data-latest="\d+"/, 'data-latest="1"'],
    [
      'cautions',
      'door-locked/wait',
      /<section class="care [a-z]+"/,
      '<section class="care notice"',
    ],
    ['calls', 'door-locked/stop-fire', /href="tel:[^"]*"(?=>\s*<span>)/, 'href="tel:+15550100"'],
    ['note', 'door-locked/stop-fire', /data-note/, ''],
  ])('would be seen to differ in %s: %s with %s changed', (part, node, place, other) => {
    const html = textOf(`${node}/index.html`);
    const model = models.get(`/${node}/`);
    expect(html).toMatch(place);
    const page = readPage(html.replace(place, other), `/${node}/`);
    expect(page && model && differences(page, model)).toEqual([
      expect.stringContaining(`${node}, ${part}: page `),
    ]);
  });
});
