// A release recalled: what copies on devices do about it. Each test has an origin of its own.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { releases } from '../../src/content/load.ts';
import { makeCodebooks } from '../../src/note/codebook.ts';
import { writeCode } from '../../src/note/write.ts';
import { closeSite } from '../../src/site/build/close.ts';
import { expect } from './support/fixtures.ts';
import { DOWN, NONE, kept, state, test } from './support/offline.ts';
import type { Fate } from './support/origin.ts';
import { makeRelease, newest } from './support/releases.ts';
import { answerLink, giveAnswer } from './support/site.ts';

const dirs: string[] = [];
const made = async (...of: Parameters<typeof makeRelease>) => {
  const dir = await makeRelease(...of);
  dirs.push(dir);
  return dir;
};
let first: string;
let second: string;
const near = '/door-locked/near/';
const recall = { least: newest + 1, pages: [] };
test.beforeAll(async () => {
  first = await made('first', {});
  second = await made('second', { release: newest + 1, recall });
});
test.afterAll(async () => {
  for (const dir of dirs) await rm(dir, { recursive: true });
});
// One worker, one pair of copies.
test.describe.configure({ mode: 'default' });

const mark = (page: Page) => page.locator('main').getAttribute('data-mark');
/** Resolves once a release is kept whole and answers. */
const inUse = (page: Page, release: number) =>
  expect
    .poll(() =>
      page.evaluate(async () => {
        const answer = await fetch('/recall.json');
        const { copy } = (await answer.json()) as { copy?: { release: number } };
        return copy?.release;
      }),
    )
    .toBe(release);
const isRecalled = (page: Page) =>
  expect(page.getByRole('heading', { name: 'This guide has been corrected' })).toBeVisible();
const goOn = (page: Page) => page.getByRole('link', { name: /^Go on with the corrected/ });
const journey = (page: Page) => new URLSearchParams(new URL(page.url()).hash.slice(1)).get('j');

/** The first release kept and in use, and two answers given. */
async function begun(page: Page): Promise<void> {
  await page.goto('/');
  await kept(page);
  await page.goto('/door-locked/danger/');
  expect(await mark(page)).toBe('first');
  await giveAnswer(answerLink(page, 'none'));
  await answerLink(page, 'unsure').click();
  await expect(page).toHaveURL(/\/near\/#/);
  // The pages' question is answered: what is released next is not what they hear.
  await expect.poll(() => page.evaluate(async () => (await fetch('/recall.json')).ok)).toBe(true);
}
test.use({
  // The newest copy that one is kept from is the origin's own.
  expects: DOWN,
});

test('in mid-guide: the page is replaced, the answers are kept, the new release goes on', async ({
  place: { origin, page },
}) => {
  await origin.release(first);
  await begun(page);
  const before = journey(page);
  await origin.release(second);
  await page.reload();
  // The copy's page came at once; the answer of the site replaces it.
  await isRecalled(page);
  expect(journey(page)).toBe(before);
  await goOn(page).click();
  await expect(page).toHaveURL(/\/door-locked\/near\/#/);
  expect([await mark(page), journey(page)]).toEqual(['second', before]);
  // It is fetched and taken over without a word while the journey goes on.
  await inUse(page, newest + 1);
  origin.fate = () => 'cut';
  await answerLink(page, 'heat').click();
  await expect(page).toHaveURL(/\/door-locked\/wait\/#/);
  expect(await mark(page)).toBe('second');
});

test('another tab in the middle of the guide is turned away as well', async ({
  place: { origin, context, page },
}) => {
  await origin.release(first);
  await begun(page);
  const before = journey(page);
  const other = await context.newPage();
  await origin.release(second);
  await other.goto('/door-locked/danger/');
  await isRecalled(other);
  await isRecalled(page);
  expect(journey(page)).toBe(before);
  await goOn(page).click();
  await expect.poll(() => mark(page)).toBe('second');
  await goOn(other).click();
  await expect.poll(() => mark(other)).toBe('second');
});

test('without a network a recall that was heard of holds; with one it goes on', async ({
  place: { origin, page },
}) => {
  await origin.release(first);
  await begun(page);
  await origin.release(second);
  // All but the recall is cut: the newer release cannot be had.
  origin.fate = (path) => (path === '/recall.json' ? 'answer' : 'cut');
  await page.reload();
  await isRecalled(page);
  origin.fate = () => 'cut';
  await goOn(page).click();
  await isRecalled(page);
  await expect(page.locator('.danger-list summary')).toBeVisible();
  await expect(page.locator('main a[href^="tel:"]')).toBeVisible();
  await page.goto('/door-locked/danger/');
  await isRecalled(page);
  origin.fate = () => 'answer';
  await goOn(page).click();
  await expect(page).toHaveURL(/\/door-locked\/danger\//);
  expect(await mark(page)).toBe('second');
});

test('a page corrected without a release is replaced alone, and once', async ({
  place: { origin, page },
}) => {
  const again = await made('again', { recall: { least: 1, pages: [near] } });
  await origin.release(first);
  await begun(page);
  await origin.release(again);
  // The newer copy cannot be had yet: the one in use goes on, without the page.
  origin.fate = (path) => (path.startsWith('/_astro/kept/') ? 'cut' : 'answer');
  await page.reload();
  await isRecalled(page);
  await goOn(page).click();
  await expect.poll(() => mark(page)).toBe('again');
  await page.goto('/door-locked/danger/');
  expect(await mark(page)).toBe('first');
  // The copy that was made with the correction has the page itself.
  origin.fate = () => 'answer';
  await expect
    .poll(async () => {
      await page.goto('/door-locked/danger/');
      return mark(page);
    })
    .toBe('again');
  origin.fate = () => 'cut';
  await page.goto(`${near}#j=danger.none~since.unsure`);
  await expect(page.locator('main[data-mark="again"]')).toBeVisible();
});

test('what waits already is told, and used at once', async ({
  place: { origin, context, page },
}) => {
  const waits = await made('waits', { recall: { least: 1, pages: [near] } });
  await origin.release(first);
  await begun(page);
  const other = await context.newPage();
  await origin.release(waits);
  // Its word does not get through at first: the newer release comes as any other.
  origin.fate = (path) => (path === '/recall.json' ? 'cut' : 'answer');
  await other.goto('/about/');
  await expect.poll(async () => (await state(other)).waiting).toBe(true);
  await expect(other.locator('.update')).toBeVisible();
  origin.fate = () => 'answer';
  await other.goto('/door-locked/danger/');
  await isRecalled(page);
  await expect.poll(async () => (await state(other)).waiting).toBe(false);
  origin.fate = () => 'cut';
  await goOn(page).click();
  await expect(page.locator('main[data-mark="waits"]')).toBeVisible();
});

test('two releases back', async ({ place: { origin, context, page } }) => {
  const third = await made('third', {
    ...{ release: newest + 2, recall: { least: newest + 2, pages: [] } },
  });
  const middle = await made('middle', { release: newest + 1 });
  await origin.release(first);
  await begun(page);
  await origin.release(middle);
  await page.reload();
  await expect.poll(async () => (await state(page)).waiting).toBe(true);
  expect(await mark(page)).toBe('first');
  await origin.release(third);
  const other = await context.newPage();
  await other.goto('/door-locked/danger/');
  await isRecalled(other);
  await isRecalled(page);
  await goOn(page).click();
  await expect.poll(() => mark(page)).toBe('third');
});

test('the server gone: the copy serves on, and past its age asks first', async ({
  place: { origin, page },
}) => {
  const old = await made('old', { renewAfter: -1, built: '2020-01-01' });
  await origin.release(old);
  await page.goto('/');
  await kept(page);
  // Online nothing is asked, however old.
  await page.goto('/door-locked/danger/');
  await expect(answerLink(page, 'none')).toBeVisible();
  origin.fate = () => 'cut';
  await page.goto('/');
  await expect(page.locator('[data-age]')).toContainText(/saved on this device.* today\.\s*$/);
  await page.locator('a.start').click();
  await expect(page).toHaveURL(/\/renew\/\?door-locked\/danger\//);
  // Never away from danger and numbers.
  await page.locator('.danger-list summary').click();
  await page.locator('[data-exit="fire"]').click();
  await expect(page).toHaveURL(/\/door-locked\/stop-fire\//);
  await page.goBack();
  await page.getByRole('link', { name: 'Try again' }).click();
  await expect(page).toHaveURL(/\/renew\//);
  await page.getByRole('link', { name: 'Use the saved copy' }).click();
  await giveAnswer(answerLink(page, 'none'));
  await expect(page).toHaveURL(/\/door-locked\/since\/#/);
});

/** A page with a breaker in it, while the site has not said what is recalled. */
const panel = '/door-locked/breaker-off/';
const toPanel = [
  ...['danger.none', 'since.overnight', 'display.time', 'off-once.same', 'controls.buttons'],
  ...['try-door.stuck', 'panel.ready'],
].join('~');

test('an answer on a page with a breaker waits for the word, a short while at most', async ({
  place: { origin, page },
}) => {
  await origin.release(first);
  await begun(page);
  origin.fate = (path) => (path === '/recall.json' ? 'hang' : 'answer');
  const start = Date.now();
  await page.goto(`${panel}#g=door-locked&j=${toPanel}`);
  expect(Date.now() - start, 'the page came at once').toBeLessThan(2500);
  await answerLink(page, 'bad').click();
  await page.waitForURL((url) => url.pathname !== panel);
  expect(Date.now() - start, 'the answer waited').toBeGreaterThan(2900);
});

test('an answer on a page with a breaker that meets a recall is not lost', async ({
  place: { origin, page },
}) => {
  await origin.release(first);
  await begun(page);
  let say: (fate: Fate) => void = () => undefined;
  const word = new Promise<Fate>((done) => (say = done));
  origin.fate = (path) => (path === '/recall.json' ? word : 'answer');
  await page.goto(`${panel}#g=door-locked&j=${toPanel}`);
  // The page is left while the worker waits for the word.
  await answerLink(page, 'bad').click({ noWaitAfter: true });
  await origin.release(second);
  say('answer');
  await isRecalled(page);
  expect(journey(page)).toBe(`${toPanel}~breaker-off.bad`);
});

test('a code newer than the copy: the newest copy is taken, the code kept', async ({
  place: { origin, page },
}) => {
  const [last] = releases().slice(-1);
  if (!last) throw new Error('no release');
  const books = makeCodebooks([...releases(), { ...last, release: newest + 1 }]);
  const written = writeCode(
    {
      release: newest + 1,
      guide: 'door-locked',
      journey: [],
      day: 0,
      details: {},
      error: '',
    } as never,
    books,
  );
  if (!written.ok) throw new Error(written.error.code);
  const code = written.value;
  await origin.release(first);
  await page.goto('/');
  await kept(page);
  await page.goto('/preview/');
  await kept(page, true);
  await page.locator('#code').fill(code);
  await page.getByRole('button', { name: 'Read' }).first().click();
  const take = page.getByRole('button', { name: 'Use the newest copy' });
  await take.click();
  await expect(page.locator('.update [role="status"]')).toHaveText('You have the newest copy.');
  await origin.release(second);
  await take.click();
  await expect(page.locator('main[data-mark="second"]')).toBeVisible();
  expect(new URL(page.url()).hash).toContain(code);
  await expect(page.locator('#code')).toHaveValue(code);
});

test.describe('a firm that closes', () => {
  // A closed site has no pages but one: what was asked for by another address is not found.
  test.use({ expects: [/404/] });
  test('the worker and the copy take themselves off', async ({ place: { origin, page } }) => {
    const closed = await mkdtemp(join(tmpdir(), 'hobnote-closed-'));
    dirs.push(closed);
    await closeSite(closed);
    await origin.release(first);
    await begun(page);
    await origin.release(closed);
    await page.reload();
    const closing = page.getByRole('heading', { name: 'This guide is closed' });
    // The old worker may be first to say that what it keeps must not be shown.
    const goOn = page.getByRole('link', { name: 'Go on with the corrected guide' });
    await expect(closing.or(goOn)).toBeVisible();
    if (await goOn.isVisible()) await goOn.click();
    await expect(closing).toBeVisible();
    // The worker that goes leads the page away once more.
    await expect.poll(() => page.evaluate(() => caches.keys()).catch(() => undefined)).toEqual([]);
    expect(await state(page)).toEqual(NONE);
  });
});

test.describe('a page removed', () => {
  // Nothing is kept where the reader saves data: every page is the host's.
  test.use({ saves: true, expects: [/404/] });
  test('leads back, and is not offered again', async ({ place: { origin, page } }) => {
    const fewer = await made('fewer', {}, ['door-locked/near']);
    await origin.release(first);
    await page.goto('/door-locked/danger/');
    await giveAnswer(answerLink(page, 'none'));
    await answerLink(page, 'unsure').click();
    await expect(page).toHaveURL(/\/near\/#/);
    await origin.release(fewer);
    await page.reload();
    const back = page.getByRole('link', { name: 'Go back to the last question' });
    await expect(back).toBeVisible();
    await page.goto('/');
    await expect(page.locator('.resume')).toHaveAttribute('href', /\/since\//);
    await page.locator('.resume').click();
    await expect(page).toHaveURL(/\/door-locked\/since\/#.*j=danger\.none$/);
  });
});
