// The desk in two tabs, in every guide, with every question, step and end, its wait, and no scripts.
import { formatFragment } from '../../src/address/fragment.ts';
import { staffLanguages } from '../../src/content/load.ts';
import { readCode } from '../../src/note/read.ts';
import { namespaceText } from '../../src/site/words.ts';
import { axe } from './support/axe.ts';
import { codebooks, newest } from './support/codebooks.ts';
import { choose, HUM, keyOf, openDesk, press, rows, say, seen } from './support/desk.ts';
import { DESK, expect, siteUrl, test } from './support/fixtures.ts';
import { noSidewaysScroll, targetsAtLeast, textSize } from './support/layout.ts';
import { addressOf, guide, shortest, to } from './support/note.ts';
import { every } from './support/pages.ts';
import { guides } from './support/shortest-journeys.ts';

test.use(DESK);

const { names } = namespaceText('en', 'guides') as { names: Record<string, string> };

test('every guide is chosen by a tap or a number key, and the call is in its words', async ({
  page,
}) => {
  const choices = page.locator('.choose .choices button');
  const chosen = new Set<string>();
  for (const nth of guides.keys()) {
    await page.goto('/desk/');
    await expect(choices).toHaveCount(guides.length);
    if (nth === 0) await axe(page);
    const label = (await choices.nth(nth).textContent()) ?? '';
    const guide = guides.find(({ id }) => label.endsWith(names[id] ?? 'no name'));
    expect(guide, label).toBeDefined();
    if (!guide) continue;
    chosen.add(guide.id);
    await seen(page);
    if (nth % 2 === 0) await choices.nth(nth).click();
    else await press(page, String(nth + 1));
    await choose(page, 'None of these');
    await expect(rows(page)).toHaveCount(1);
    const [first] = guide.nodes.get(guide.start)?.answers.filter(({ id }) => id === 'none') ?? [];
    const title = namespaceText('en', guide.id)[first?.to ?? ''] as { title: string };
    await expect(say(page)).toHaveText(title.title);
    const code = (await page.locator('.code-out .groups strong').allTextContents()).join('-');
    const reading = readCode(code, codebooks);
    expect(reading, guide.id).toMatchObject({
      kind: 'exact',
      note: { release: newest, guide: guide.id, journey: [{ at: guide.start, answer: 'none' }] },
    });
  }
  expect([...chosen].toSorted()).toEqual(guides.map(({ id }) => id as string).toSorted());
});

test('no clock set while the page was away ends a wait, and the desk says so', async ({ page }) => {
  const [node, journey] =
    [...shortest].find(([id]) => guide.nodes.get(id)?.timer?.kind === 'cooling') ?? [];
  expect(journey?.length).toBeGreaterThan(1);
  if (!node || !journey) return;
  const now = Math.floor(Date.now() / 1000);
  const soonest = page.locator('.step-timer .faces strong').last();
  for (const moved of [3 * 3600, -3 * 3600]) {
    // As the address was when the clock was moved: twenty minutes were left.
    const counted = now - moved;
    const timer = { node, end: counted + 1200, counted };
    await page.goto(`/desk/#${formatFragment({ journey, details: {}, timer })}`);
    await expect(page.locator('.told')).toContainText('That time is not counted.');
    // Danger is asked about first, every time.
    await choose(page, 'None of these');
    await expect(soonest).toHaveText(/^(20:0\d|19:[45]\d)$/);
    await axe(page);
    // A reload at once has nothing to tell of it.
    await page.reload();
    await expect(page.locator('.told')).toContainText('The answers are kept');
    await expect(page.locator('.told')).not.toContainText('not counted');
    await choose(page, 'None of these');
    await expect(soonest).toHaveText(/^(20:0\d|19:[3-5]\d)$/);
    await page.goto('about:blank');
  }
});

test('two calls in two tabs never mix', async ({ page, context }) => {
  const other = await context.newPage();
  await openDesk(page, { journey: HUM.slice(0, 3) });
  await openDesk(other);
  await page.getByLabel('Name', { exact: true }).fill('Ann');
  await other.getByLabel('Name', { exact: true }).fill('Bob');
  await choose(other, 'A smell of gas');
  await expect(rows(page)).toHaveCount(3);
  await other.getByRole('button', { name: 'Next call' }).click();
  await other.getByRole('button', { name: 'Yes' }).click();
  await expect(rows(other)).toHaveCount(0);
  await page.reload();
  expect(addressOf(page).journey).toEqual(HUM.slice(0, 3));
  await expect(page.locator('#desk-job')).toHaveValue(/^Job: URGENCY NOT KNOWN/);
  await expect(page.locator('#desk-job')).not.toHaveValue(/Bob|gas/);
  // Another call's address put into this tab takes its place, and the caller's fields go.
  await page.getByLabel('Name', { exact: true }).fill('Ann');
  await page.evaluate((hash) => (location.hash = hash), 'j=danger.none');
  await expect(rows(page)).toHaveCount(1);
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('');
});

test('at every width and text size all is in reach', async ({ page }) => {
  await openDesk(page, { journey: HUM });
  await choose(page, 'None of these');
  await expect(page.locator('.end')).toBeVisible();
  const own = 'main :is(a, button, input:not([type="checkbox"]), select, textarea):visible';
  await targetsAtLeast(page, own);
  for (const width of [1280, 360, 320]) {
    await page.setViewportSize({ width, height: 740 });
    await noSidewaysScroll(page);
  }
  await targetsAtLeast(page, own);
  await textSize(page, 200);
  await noSidewaysScroll(page);
  await axe(page);
});

test('questions, steps and ends of every make are shown with their cautions and answers', async ({
  page,
}) => {
  await openDesk(page);
  const nodes = [...guide.nodes.values()].filter(({ id }) => id !== guide.start);
  expect(nodes.length).toBeGreaterThan(60);
  const seen = new Set<string>();
  for (const { id, kind, answers, caution, timer } of nodes) {
    const make = every ? id : [kind, answers.length, caution, timer?.kind].join();
    if (seen.has(make)) continue;
    seen.add(make);
    await page.evaluate(
      (hash) =>
        // The desk listens too, and was there first: it has taken the call over by then.
        new Promise<void>((taken) => {
          addEventListener('hashchange', () => taken(), { once: true });
          location.hash = hash;
        }),
      `j=${to(id)
        .journey.map(({ at, answer }) => `${at}.${answer}`)
        .join('~')}`,
    );
    await press(page, 'd');
    const first = to(id).journey[0]?.answer ?? '';
    await press(page, keyOf(guide.start, first));
    await expect(page.locator('.ask'), id).toBeVisible();
    const shown = await page.evaluate(() => [
      document.querySelectorAll('.middle .choices button').length,
      document.querySelectorAll('.middle .choices .unsure').length,
      document.querySelectorAll('.middle .care .tick').length,
      document.querySelectorAll('.step-timer button').length,
    ]);
    const open = answers.length > 0;
    expect(shown, id).toEqual([
      answers.length,
      open ? 1 : 0,
      open && !caution ? 0 : 1,
      timer ? 1 : 0,
    ]);
  }
});

test('without scripts it leads to the plain guide', async ({ browser }) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(`${siteUrl()}desk/`);
  await page.getByRole('link', { name: 'Start at the beginning' }).click();
  await expect(page).toHaveURL(/\/door-locked\/danger\/$/);
  await context.close();
});

test('the page for staff leads here', async ({ page }) => {
  await page.goto('/staff/');
  await page.locator('main a[href$="desk/"]').first().click();
  await expect(say(page)).toBeVisible();
});

test('every danger answer and every “do not” stands in the first screen', async ({ page }) => {
  const dangers = guide.nodes.get(guide.start)?.answers ?? [];
  const stops = dangers.filter(({ to }) => (guide.nodes.get(to)?.answers.length ?? 1) === 0);
  expect(stops.length).toBeGreaterThan(8);
  const inSight = async (what: string, where: string) => {
    for (const [width, height] of [
      [1280, 720],
      [1366, 768],
    ] as const) {
      await page.setViewportSize({ width, height });
      const all = await page
        .locator(what)
        .evaluateAll((elements) =>
          elements.map((one) => Math.ceil(one.getBoundingClientRect().bottom - innerHeight)),
        );
      expect(all.length, where).toBeGreaterThan(0);
      expect(
        Math.max(...all),
        `${where} at ${String(width)}×${String(height)}`,
      ).toBeLessThanOrEqual(0);
    }
  };
  for (const language of staffLanguages()) {
    await page.goto('about:blank');
    await openDesk(page, {}, language);
    await expect(page.locator('.ask.danger')).toBeVisible();
    await inSight('.choices button', `danger, ${language}`);
  }
  for (const { id } of stops) {
    await page.goto('about:blank');
    await openDesk(page);
    await press(page, keyOf(guide.start, id));
    await expect(page.locator('.end')).toBeVisible();
    await inSight('.middle .care li', id);
  }
});
