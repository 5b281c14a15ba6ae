// Nothing on the desk can be misfired: an answer is one to a question that stood on the screen.
import type { Page } from '@playwright/test';
import { parseId } from '../../src/guide/ids.ts';
import { namespaceText } from '../../src/site/words.ts';
import { expect, test, DESK } from './support/fixtures.ts';
import { Counted, HUM, openDesk, rows, say, seen, status } from './support/desk.ts';
import { addressOf, guide } from './support/note.ts';
import { guides } from './support/shortest-journeys.ts';

test.use(DESK);

/** Delays every part of a guide by so many milliseconds, as a slow network would. */
const slow = (page: Page, delay: number) =>
  page.route('**/*.desk.*.json', async (route) => {
    await new Promise((done) => setTimeout(done, delay));
    await route.continue();
  });

/** What the page's own frames painted last, written down at every key that comes down. */
const record = (page: Page) =>
  page.addInitScript(() => {
    const log: { key: string; painted: string }[] = [];
    let painted = '';
    const frame = (): void => {
      const now = document.querySelector('#desk-say')?.textContent ?? '';
      // The frame that is begun here has been painted when the next task runs.
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => (painted = now);
      port2.postMessage(0);
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
    addEventListener('keydown', ({ key }) => log.push({ key, painted }), { capture: true });
    Object.assign(window, { log });
  });
const titleOf = (at: string, of: string = guide.id): string => {
  const node = guides.find(({ id }) => id === of)?.nodes.get(at as never);
  const { guide: own = of, name } = parseId(node?.sentences ?? at);
  return (namespaceText('en', `desk/${own}`)[name] as { title: string }).title;
};

for (const delay of [0, 700])
  test(`keys at machine speed answer only what was painted, files late by ${String(delay)} ms`, async ({
    page,
  }) => {
    await record(page);
    await slow(page, delay);
    await page.goto('/desk/');
    let answers = 0;
    for (let call = 0; call < 4; call += 1) {
      await seen(page);
      // Whole calls without waiting for anything: the complaint, no danger, and on at random.
      for (const key of ['1', ...'---- 2 20 21 2-3 12 20 1']) {
        await page.keyboard.press(key === ' ' ? 'Space' : key);
        await page.waitForTimeout(call * 50);
      }
      await expect(say(page)).toBeVisible();
      const { journey, guide: of } = addressOf(page);
      const log = await page.evaluate(
        () => (window as unknown as { log: { key: string; painted: string }[] }).log,
      );
      // Each answer has a key of its own that fell while its question was on the screen, in order.
      let from = 0;
      for (const { at, answer } of journey) {
        const found = log.findIndex(
          ({ key, painted }, i) => i >= from && painted === titleOf(at, of) && /[-\d]/.test(key),
        );
        expect(found, `${at}.${answer} was on the screen when a key fell`).toBeGreaterThanOrEqual(
          0,
        );
        from = found + 1;
      }
      answers += journey.length;
      await expect(page.locator('.told')).toHaveCount(0);
      await page.evaluate(() => (window as unknown as { log: unknown[] }).log.splice(0));
      await seen(page);
      await page.keyboard.press('n');
      await page.keyboard.press('Enter');
      await expect(rows(page)).toHaveCount(0);
    }
    expect(answers, 'some keys did fall on a question').toBeGreaterThan(4);
  });

test('a second call on the same complaint stays where it is', async ({ page }) => {
  await slow(page, 700);
  await openDesk(page);
  const keys = new Counted(page);
  await keys.press('-', '1', 'n', 'Enter', '1', '-');
  await page.waitForTimeout(900);
  await expect(say(page)).toHaveText(titleOf('since'));
  await expect(page.locator('.told')).toHaveCount(0);
  await keys.press('2');
  expect(addressOf(page).journey.map(({ answer }) => String(answer))[0]).toBe('none');
});

test('a held key answers one question, and none of its repeats another', async ({ page }) => {
  await openDesk(page);
  await seen(page);
  await page.keyboard.down('-');
  for (let again = 0; again < 12; again += 1) {
    await page.waitForTimeout(60);
    await page.keyboard.down('-');
  }
  await page.keyboard.up('-');
  await expect(rows(page)).toHaveCount(1);
  await page.keyboard.down('n');
  await page.keyboard.down('n');
  await page.keyboard.up('n');
  await expect(page.getByRole('alert')).toContainText('End this call?');
});

test('no name typed beside a field ends a call or erases a caller', async ({ page }) => {
  await openDesk(page);
  await page.getByLabel('Name', { exact: true }).fill('Bob');
  await page.keyboard.press('Escape');
  const keys = new Counted(page);
  await keys.press('-', '1');
  const before = page.url();
  for (const name of ['Anna', 'Nonna', 'Xxnn', 'Nnnnx']) {
    await page.keyboard.type(name);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
  }
  expect(page.url()).toBe(before);
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Bob');

  // What was meant can be taken back: the caller, answers one by one, and a call that is over.
  await keys.press('x');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('');
  await keys.press('u');
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Bob');
  await keys.press('u');
  await expect(rows(page)).toHaveCount(1);
  await keys.press('1', 'n');
  await expect(page.getByRole('alert')).toContainText('Its job text was not copied');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('');
  await expect(page.locator('.calls')).toContainText('not copied');
  await keys.press('u', '-');
  await expect(rows(page)).toHaveCount(2);
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Bob');
});

test('calls on hold are gone on with, each with its own answers and caller', async ({ page }) => {
  await openDesk(page);
  const keys = new Counted(page);
  const name = page.getByLabel('Name', { exact: true });
  for (const [index, who] of ['Ann', 'Bob', 'Cleo'].entries()) {
    if (index > 0) await keys.press('1');
    await name.fill(who);
    await page.keyboard.press('Escape');
    await keys.press('-', String(index + 1), 'h');
  }
  await expect(page.locator('.calls li')).toHaveCount(3);
  await page.locator('.calls').getByRole('button', { name: 'Bob' }).click();
  await expect(name).toHaveValue('Bob');
  await keys.press('-');
  expect(addressOf(page).journey[1]?.answer).toBe(
    guide.nodes.get('since' as never)?.answers[1]?.id,
  );
  await expect(page.locator('.calls li')).toHaveCount(2);
});

test('an answer to conditions takes a tick for each of them', async ({ page }) => {
  await openDesk(page, { journey: HUM.slice(0, 8) });
  const keys = new Counted(page);
  await keys.press('-');
  await expect(say(page)).toHaveText('Is the breaker panel safe to use?');
  await expect(page.locator('.ask')).toContainText('Say this too');
  const ticks = page.locator('.conditions input');
  const count = await ticks.count();
  expect(count).toBeGreaterThan(2);
  if (await page.locator('.middle .care .tick').isVisible()) await keys.press('Space');
  for (let done = 0; done < count; done += 1) {
    await keys.press('1');
    await expect(status(page)).toHaveText(/^Ask each of these first/);
    await keys.press('Space');
    expect(await page.locator('.conditions input:checked').count()).toBe(done + 1);
  }
  await keys.press('1');
  await expect(rows(page)).toHaveCount(9);
});
