/**
 * Pages by the hundred, each looked at once for all that must hold of any page: its links, its
 * width at every size, its targets, axe in both themes, the Tab key. Which pages: support/pages.ts.
 */
import type { Page } from '@playwright/test';
import { languages, localeOf } from '../../src/content/load.ts';
import { ownNodes, parseId } from '../../src/guide/ids.ts';
import { formatJourney } from '../../src/address/journey-text.ts';
import { axeFaults } from './support/axe.ts';
import { expect, siteDir, test } from './support/fixtures.ts';
import { tabOrder } from './support/keyboard.ts';
import { textSize, tooWide, wideParts } from './support/layout.ts';
import { every, rootOf, textOf, visits, type OfGuide, type Visit } from './support/pages.ts';
import { tightTargets } from './support/targets.ts';
import { guides } from './support/shortest-journeys.ts';

const all = visits(siteDir());
/** Pages a test looks at: a failure names its page, and two workers end at about the same time. */
const SLICE = every ? 200 : 30;
/** 200 % is asked of a window as it is (1.4.4), 320 px of text as it is (1.4.10): 360 comes last. */
const WIDTHS = [320, 1280, 360];

test('the pages looked at are of every guide, kind and language, and show every text', () => {
  for (const language of languages()) {
    const own = all.filter((visit) => visit.language === language);
    const of = own.flatMap((visit) => visit.of ?? []);
    expect(new Set(of.map(({ guide }) => guide)), language).toEqual(new Set(guides));
    const kinds = new Set(of.map(({ node }) => node.kind));
    expect(kinds, language).toEqual(new Set(['question', 'step', 'stop', 'finish']));
    for (const path of ['', 'about/', 'care/', 'note/'])
      expect(own.map((visit) => visit.path)).toContain(rootOf(language) + path);
  }
  const texts = (pages: readonly OfGuide[]) =>
    new Set(pages.map(({ guide, node }) => textOf(siteDir(), `/${guide.id}/${node.id}/`)));
  const shown = texts(all.flatMap(({ of }) => of ?? []));
  expect(shown.size).toBeGreaterThan(200);
  expect(shown).toEqual(
    texts(guides.flatMap((guide) => ownNodes(guide).map((node) => ({ guide, node, journey: [] })))),
  );
  expect(all.filter(({ first }) => first).length).toBeGreaterThan(35);
  expect(all.filter(({ speaks }) => speaks).length).toBeGreaterThan(10 * languages().length);
});

/** Where the page's links lead once its script has put the journey in, against the guide's file. */
async function links(page: Page, { guide, node, journey }: OfGuide, language: string) {
  const given = await page.evaluate(() => {
    const told = (link: HTMLAnchorElement, name: string) => {
      const values = new URLSearchParams(link.hash.slice(1));
      return [name, link.pathname, values.get('j') ?? '', values.get('g') ?? ''].join(' ');
    };
    return {
      lang: document.documentElement.lang,
      heading: document.querySelectorAll('main h1').length,
      lost: document.querySelector('.lost:not([hidden])') !== null,
      answers: [...document.querySelectorAll<HTMLAnchorElement>('main a[data-answer]')].map(
        (link) => told(link, link.dataset['answer'] ?? ''),
      ),
      back: [...document.querySelectorAll<HTMLAnchorElement>('.back:not([hidden])')].map((link) =>
        told(link, 'back'),
      ),
      notes: [...document.querySelectorAll<HTMLAnchorElement>('[data-note]')].map((link) =>
        told(link, 'note'),
      ),
    };
  });
  const root = rootOf(language);
  const pathTo = (id: string) => {
    const { guide: other = guide.id, name } = parseId(id);
    return `${root}${other}/${name}/`;
  };
  const before = journey.at(-1);
  return {
    given: { ...given, notes: new Set(given.notes) },
    wanted: {
      lang: localeOf(language),
      heading: 1,
      lost: false,
      answers: node.answers.map(({ id, to }) =>
        [id, pathTo(to), formatJourney([...journey, { at: node.id, answer: id }]), guide.id].join(
          ' ',
        ),
      ),
      back: before
        ? [['back', pathTo(before.at), formatJourney(journey.slice(0, -1)), guide.id].join(' ')]
        : [],
      notes: new Set(
        node.answers.length > 0
          ? []
          : [['note', `${root}note/`, formatJourney(journey), guide.id].join(' ')],
      ),
    },
  };
}

/** What depends on the parts a page is made of, whatever its texts: axe in the dark, the Tab key. */
async function partFaults(page: Page): Promise<string[]> {
  const order = await tabOrder(page);
  // WCAG 4.1.2, 2.4.7, 2.4.11.
  const stops = order
    .filter(({ name, ring, seen }) => name === '' || !ring || !seen)
    .map((stop) => `stop of the Tab key: ${JSON.stringify(stop)}`);
  // The way past the top, the way home, the danger list, and something to do.
  const skip = await page.evaluate(() => document.querySelector('.skip')?.textContent.trim());
  if (order.length < 5 || order[0]?.name !== skip)
    stops.push(
      `Tab begins at ${order[0]?.name ?? 'nothing'} and stops ${String(order.length)} times`,
    );
  await page.emulateMedia({ colorScheme: 'dark' });
  const dark = await axeFaults(page, 'colors');
  await page.emulateMedia({ colorScheme: 'light' });
  return [...stops, ...dark.map((fault) => `in the dark: ${fault}`)];
}

/** What may come of long words: at the narrowest and the widest window, and at double text size. */
async function layoutFaults(page: Page): Promise<string[]> {
  const found = await tightTargets(page);
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 740 });
    found.push(...(await tooWide(page)));
  }
  await textSize(page, 200);
  return [...found, ...(await wideParts(page))];
}

/** On a small phone, with what its browser takes off, an answer is in sight at once. */
async function answerFaults(page: Page): Promise<string[]> {
  await page.setViewportSize({ width: 360, height: 620 });
  return page.evaluate(() => {
    const first = document.querySelector('.page .answers a')?.getBoundingClientRect();
    return first && first.bottom > innerHeight
      ? [`first answer ends at ${String(first.bottom)}`]
      : [];
  });
}

async function look(page: Page, { path, hash, of, language, first, speaks }: Visit): Promise<void> {
  await page.goto(path + hash);
  // No locators here: each page would get Playwright's own script first, and that takes longest.
  if (of) {
    const { given, wanted } = await links(page, of, language);
    expect.soft(given, path).toEqual(wanted);
  } else await expect(page.locator('main h1').first()).toBeVisible();
  const found = first ? await partFaults(page) : [];
  if (first || speaks) found.push(...(await axeFaults(page)));
  if (of) found.push(...(await answerFaults(page)));
  expect.soft([...found, ...(await layoutFaults(page))], path).toEqual([]);
}

for (let from = 0; from < all.length; from += SLICE)
  test(`pages ${String(from + 1)} to ${String(Math.min(from + SLICE, all.length))}`, async ({
    page,
  }) => {
    test.setTimeout(every ? 3_600_000 : 600_000);
    for (const visit of all.slice(from, from + SLICE)) await look(page, visit);
  });
