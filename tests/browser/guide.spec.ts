// The guides by taps: whole journeys, and what a reader does on the way.
import type { Page } from '@playwright/test';
import { parseId } from '../../src/guide/ids.ts';
import { formatFragment } from '../../src/address/fragment.ts';
import { formatJourney } from '../../src/address/journey-text.ts';
import type { Guide, Journey, NodeId } from '../../src/guide/types.ts';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { to, toWait } from './support/codes.ts';
import { answerLink, giveAnswer, walkGuide } from './support/site.ts';
import { guides, shortestJourneys } from './support/shortest-journeys.ts';

const journeyOf = (hash: string) => new URLSearchParams(hash.slice(1)).get('j');

/** Of a guide: the farthest end that another guide holds, where there is one; else of its own. */
function farEnd(guide: Guide): readonly [NodeId, Journey] {
  const ways = shortestJourneys(guide);
  const length = (id: NodeId) => ways.get(id)?.length ?? 0;
  const over = (id: NodeId) => Number(parseId(id).guide !== undefined);
  const [end = guide.start] = [...ways.keys()]
    .filter((id) => guide.nodes.get(id)?.answers.length === 0)
    .toSorted((a, b) => over(b) - over(a) || length(b) - length(a));
  return [end, ways.get(end) ?? []];
}

// Every single answer's link is held by sweep.spec, and by tests/built for scripts off; here whole
// ways are gone. Without scripts one way is enough: there a page knows nothing of the others.
for (const javaScriptEnabled of [true, false])
  test.describe(`scripts ${javaScriptEnabled ? 'on' : 'off'}`, () => {
    test.use({ javaScriptEnabled });
    for (const guide of javaScriptEnabled ? guides : guides.slice(0, 1))
      test(`${guide.id}: its farthest end is reached by taps, the journey riding along`, async ({
        page,
      }) => {
        const [end, journey] = farEnd(guide);
        await walkGuide(
          page,
          journey.map(({ at, answer }) => [at, answer]),
          guide.id,
        );
        const { guide: of = guide.id, name } = parseId(end);
        expect(new URL(page.url()).pathname).toBe(`/${of}/${name}/`);
        await expect(page.locator('h1')).toBeVisible();
        await expect(page.locator('.lost')).toBeHidden();
        const hash = new URLSearchParams(new URL(page.url()).hash.slice(1));
        // Where the address names no guide, the journey began in the page's own.
        expect([hash.get('j'), hash.get('g') ?? of]).toEqual(
          javaScriptEnabled ? [formatJourney(journey), guide.id] : [null, of],
        );
      });
  });

test('the danger list is one tap away and keeps the answers given', async ({ page }) => {
  await walkGuide(page, [...toWait]);
  await page.locator('.danger-list summary').click();
  await page.locator('[data-exit="sparks"]').click();
  await expect(page).toHaveURL(/stop-electric/);
  expect(journeyOf(new URL(page.url()).hash)).toMatch(/near\.heat~wait\.sparks$/);
  await axe(page);
});

test('a page reached without a journey opens the danger list and asks to start over', async ({
  page,
}) => {
  for (const hash of ['', '#j=danger.fire', '#j=%3Cscript%3E', `#j=${'a.b~'.repeat(900)}`]) {
    await page.goto(`/door-locked/since/${hash}`);
    await page.reload();
    await expect(page.locator('.lost')).toBeVisible();
    await expect(page.locator('.danger-list')).toHaveAttribute('open', '');
    await expect(page.locator('[data-exit="fire"]')).toBeVisible();
  }
  await axe(page);
});

test('a stop reached without a journey shows its stop first, the danger list folded', async ({
  page,
}) => {
  await page.goto('/door-locked/stop-gas/');
  await expect(page.locator('.danger-list')).not.toHaveAttribute('open');
  const top = async (part: string) => (await page.locator(part).boundingBox())?.y ?? NaN;
  expect(await top('.lost')).toBeGreaterThan(await top('.calls'));
  expect(await top('.stop h1')).toBeLessThan(120);
  await axe(page);
});

test('in mid-guide the header is one row on a phone, however wide its letters', async ({
  page,
}) => {
  await page.setViewportSize({ width: 360, height: 620 });
  await page.goto('/door-locked/since/#g=door-locked&j=danger.none');
  await expect(page.locator('.bar .back')).toBeVisible();
  const of = (part: string) => page.locator(`.bar ${part}`).boundingBox();
  const [firm, back, danger] = [await of('.firm'), await of('.back'), await of('.danger-list')];
  const middle = (box: typeof firm) => (box ? box.y + box.height / 2 : NaN);
  expect(Math.abs(middle(firm) - middle(danger))).toBeLessThan(8);
  expect(Math.abs(middle(back) - middle(danger))).toBeLessThan(8);
});

test('Back leads to the question before, and the answer can be changed', async ({ page }) => {
  await walkGuide(page, [...toWait]);
  await page.locator('.back').click();
  await expect(page).toHaveURL(/\/near\//);
  await answerLink(page, 'quiet').click();
  await expect(page).toHaveURL(/\/display\//);
  expect(journeyOf(new URL(page.url()).hash)).toMatch(/near\.quiet$/);
});

test('every page says what was answered, of its own journey only, and Change goes back to it', async ({
  page,
  context,
}) => {
  const said = page.locator('.you-said');
  await page.goto('/error-shows/danger/');
  await expect(said).toHaveCount(0);
  await giveAnswer(answerLink(page, 'none'));
  await expect(said).toHaveText('You said: None of these Change');
  await axe(page);
  await answerLink(page, 'error').click();
  await page.waitForURL('**/error-write/**');
  await answerLink(page, 'written').click();
  await page.waitForURL('**/off-once/**');
  await answerLink(page, 'same').click();
  await page.waitForURL('**/now/**');
  const here = page.url();
  const words = await answerLink(page, 'locked').innerText();
  await answerLink(page, 'locked').click();
  // In a guide that the first one led into, too.
  await page.waitForURL('**/door-locked/wait-cold/**');
  await expect(said.locator('b')).toHaveText(words);
  await expect(page.locator('.back')).toHaveAttribute('href', /error-shows\/now\//);
  await said.locator('.change').click();
  await expect(page).toHaveURL(here);
  await expect(said).toBeVisible();
  // Another journey to the same page, and the same one where nothing was tapped.
  await page.goto(here.replace('what.error', 'what.beeps'));
  await page.reload();
  await expect(said).toBeHidden();
  const elsewhere = await context.newPage();
  await elsewhere.goto(here);
  await expect(elsewhere.locator('.lost')).toBeHidden();
  await expect(elsewhere.locator('.you-said')).toBeHidden();
  // What this site keeps can be taken off the device, this too.
  await page.goto('/about/');
  await page.locator('.forget summary').click();
  await page.locator('.forget button').click();
  await page.goto(here);
  await expect(said).toBeHidden();
});

/** Follows what an owner says on the first page, and no danger is there. */
async function sayError(page: Page): Promise<void> {
  const saying = page.locator('a[href$="error-shows/danger/#s=what.error"]');
  await page.goto('/');
  await page.locator('.finder details', { has: saying }).locator('summary').click();
  await saying.click();
  await page.waitForURL('**/error-shows/danger/**');
  await giveAnswer(answerLink(page, 'none'));
}

test('what was said on the first page is not asked again, and Back comes to that question', async ({
  page,
}) => {
  await sayError(page);
  await page.waitForURL('**/error-shows/error-write/**');
  const { hash } = new URL(page.url());
  expect(journeyOf(hash)).toBe('danger.none~what.error');
  expect(hash).not.toContain('s=');
  const said = page.locator('.you-said b');
  await expect(said).toBeVisible();
  const words = await said.innerText();
  await page.locator('.back').click();
  await page.waitForURL('**/error-shows/what/**');
  await page.reload();
  await expect(answerLink(page, 'error')).toHaveText(words);
  await expect(page).toHaveURL(/\/error-shows\/what\/#(?!.*s=).*j=danger\.none$/);
  await answerLink(page, 'beeps').click();
  await page.waitForURL('**/error-shows/beep-source-plain/**');
  expect(journeyOf(new URL(page.url()).hash)).toBe('danger.none~what.beeps');
  // The browser's own way back is no trap either.
  await sayError(page);
  await page.waitForURL('**/error-shows/error-write/**');
  await page.goBack();
  await expect(page).toHaveURL(/\/error-shows\/what\//);
  await expect(answerLink(page, 'error')).toBeVisible();
});

test.describe('with scripts off', () => {
  test.use({ javaScriptEnabled: false });
  test('what was said on the first page is simply asked', async ({ page }) => {
    await sayError(page);
    await expect(page).toHaveURL(/\/error-shows\/what\//);
    await expect(answerLink(page, 'error')).toBeVisible();
  });
});

test('an answer that asks for a second tap goes on at the second, by touch and by keys', async ({
  page,
}) => {
  await page.goto('/door-locked/danger/');
  const asking = answerLink(page, 'none');
  await expect(asking).toHaveAttribute('href', /j=/);
  const kept = () => page.evaluate(() => localStorage.getItem('hobnote.journey'));
  await asking.click();
  await expect(asking).toHaveAttribute('data-armed', '');
  await expect(page.locator('[data-tell]')).toHaveText(/^Tap again to go on: /);
  expect([await kept(), new URL(page.url()).pathname]).toEqual([null, '/door-locked/danger/']);
  await axe(page);
  // A tap elsewhere, another answer and the focus going on take it back.
  for (const away of [() => page.locator('h1').click(), () => page.keyboard.press('Tab')]) {
    await away();
    await expect(asking).not.toHaveAttribute('data-armed');
    await expect(page.locator('[data-tell]')).toHaveText('');
    await asking.click();
    await expect(asking).toHaveAttribute('data-armed', '');
  }
  // A double tap is one tap.
  await page.locator('h1').click();
  await asking.dblclick();
  await expect(asking).toHaveAttribute('data-armed', '');
  await asking.click();
  await page.waitForURL('**/since/**');
  await page.goBack();
  await asking.focus();
  await page.keyboard.press('Enter');
  await expect(asking).toHaveAttribute('data-armed', '');
  await page.keyboard.press('Enter');
  await page.waitForURL('**/since/**');
  expect(journeyOf(new URL(page.url()).hash)).toBe('danger.none');
});

test('the last three journeys are kept, and going on with one or back in it makes no other', async ({
  page,
}) => {
  const titles = () => page.locator('.kept .earlier a').allInnerTexts();
  const home = async () => {
    await page.goto('/');
    await expect(page.locator('.resume')).toBeVisible();
    const box = await page.locator('.resume').boundingBox();
    expect((box?.y ?? 0) + (box?.height ?? 0), 'in sight at once').toBeLessThan(620);
  };
  await walkGuide(page, [...toWait]);
  await page.locator('.back').click();
  await page.waitForURL('**/near/**');
  await giveAnswer(answerLink(page, 'quiet'));
  await page.waitForURL('**/display/**');
  const first = page.url();
  const title = await page.locator('h1').innerText();
  await home();
  await expect(page.locator('.resume')).toContainText(title);
  expect(await titles()).toEqual([]);
  // Another start leaves it be, of the same guide too.
  await page.locator('.button.start').click();
  await giveAnswer(answerLink(page, 'none'));
  await page.waitForURL('**/since/**');
  await answerLink(page, 'never').click();
  await page.waitForURL('**/near-calm/**');
  await home();
  expect(await titles()).toEqual([title]);
  for (const guide of ['error-shows', 'burner']) {
    await page.goto(`/${guide}/danger/`);
    await giveAnswer(answerLink(page, 'none'));
    await page.waitForURL((url) => url.pathname.startsWith(`/${guide}/`) && url.hash !== '');
    await home();
  }
  expect(await titles()).toHaveLength(2);
  await page.locator('.kept .earlier a').first().click();
  await home();
  expect(await titles()).toHaveLength(2);
  await axe(page);
  await page.goto(first);
  await home();
  await page.locator('.resume').click();
  await expect(page).toHaveURL(first);
});

test('the display’s text is kept as typed, whatever it holds', async ({ page }) => {
  await walkGuide(page, [
    ['danger', 'none'],
    ['since', 'overnight'],
    ['display', 'error'],
  ]);
  const hostile = '<b>F9 \u202eE1';
  await page.getByLabel('What the display shows').fill(hostile);
  await axe(page);
  await answerLink(page, 'written').click();
  await expect(page).toHaveURL(/off-once-cold/);
  expect(new URLSearchParams(new URL(page.url()).hash.slice(1)).get('e')).toBe(hostile);
  await page.locator('.back').click();
  await expect(page.getByLabel('What the display shows')).toHaveValue(hostile);
});

test('the first page goes on where the reader left off, and sets a broken copy aside', async ({
  page,
}) => {
  await walkGuide(page, [...toWait]);
  await expect(page).toHaveURL(/\/wait\//);
  await page.goto('/');
  await page.locator('.resume').click();
  await expect(page).toHaveURL(/\/wait\//);
  for (const broken of [
    '{',
    'javascript:alert(1)',
    'https://elsewhere.example/#j=danger.none',
    '/#j=',
  ]) {
    await page.evaluate((text) => localStorage.setItem('hobnote.journey', text), broken);
    await page.goto('/about/');
    await page.goto('/');
    await expect(page.locator('.resume')).toBeHidden();
    expect(await page.evaluate(() => localStorage.getItem('hobnote.journey.broken'))).toBe(broken);
  }
});

test('with storage blocked the journey goes on', async ({ page }) => {
  await page.addInitScript(() =>
    Object.defineProperty(window, 'localStorage', {
      get() {
        throw new DOMException('blocked', 'SecurityError');
      },
    }),
  );
  await walkGuide(page, [...toWait]);
  expect(journeyOf(new URL(page.url()).hash)).toMatch(/near\.heat$/);
});

test('taps that come before a page’s script has run lose nothing of the journey', async ({
  page,
  watched,
}) => {
  watched.expect(/request failed .*\.js/);
  watched.expect(/console error .*ERR_FAILED/);
  const scripts = '**/_astro/*.js';
  const tapEarly = async (answer: string) => {
    await page.route(scripts, (route) => route.abort());
    await page.reload();
    await answerLink(page, answer).click({ noWaitAfter: true });
    await page.unroute(scripts);
  };
  const journey = () => new URLSearchParams(new URL(page.url()).hash.slice(1)).get('j');
  // The first question, one in the middle, and one that leads into another guide.
  await page.goto('/error-shows/danger/');
  await tapEarly('none');
  await page.waitForURL('**/error-shows/what/**');
  await page.reload();
  expect(journey()).toBe('danger.none');
  await expect(page.locator('.lost')).toBeHidden();
  await answerLink(page, 'error').click();
  await page.waitForURL('**/error-write/**');
  await tapEarly('written');
  await page.waitForURL('**/off-once/**');
  await page.reload();
  await expect.poll(journey).toBe('danger.none~what.error~error-write.written');
  await answerLink(page, 'same').click();
  await page.waitForURL('**/now/**');
  await tapEarly('locked');
  await page.waitForURL('**/door-locked/wait-cold/**');
  await page.reload();
  await expect(page.locator('.lost')).toBeHidden();
  expect(journey()).toBe('danger.none~what.error~error-write.written~off-once.same~now.locked');
});

test('an early tap with another journey kept says to start at the beginning', async ({ page }) => {
  await page.goto('/door-locked/danger/');
  await giveAnswer(answerLink(page, 'none'));
  await page.waitForURL('**/since/**');
  await page.goto('/error-shows/off-once/#a=error-write.written');
  await expect(page.locator('.lost')).toBeVisible();
});

test('the about page erases what it says and no more: Back, reload and other tabs bring nothing back', async ({
  page,
  context,
}) => {
  await walkGuide(page, [...toWait]);
  await page.locator('.timer .start').click();
  const other = await context.newPage();
  await other.goto(page.url());
  await other.goto('/door-locked/since/#g=door-locked&j=danger.none');
  await answerLink(other, 'unsure').click();
  await other.waitForURL('**/near/**');
  await page.goto('/about/');
  await page.evaluate(() => void indexedDB.open('hobnote'));
  // The first tap shows what the second does, and does nothing.
  await page.locator('.forget summary').click();
  expect(await page.evaluate(() => localStorage.getItem('hobnote.journeys'))).not.toBeNull();
  await page.locator('.forget button').click();
  const told = page.locator('[data-cleared]');
  await expect(told).toHaveText(/The answers this site saved are erased/);
  const kept = () =>
    page.evaluate(() =>
      [localStorage, sessionStorage].flatMap((store) =>
        Object.entries(store).filter(([key, text]) => key.startsWith('hobnote.') && text !== ''),
      ),
    );
  expect(await kept()).toEqual([]);
  // What it says is left, and is.
  await expect(told).toContainText('Visits saved by a technician stay');
  const databases = () => page.evaluate(async () => (await indexedDB.databases()).length);
  expect(await databases()).toBe(1);
  await expect(told).toContainText('close every tab with this guide');
  expect(await other.evaluate(() => sessionStorage.getItem('hobnote.journey'))).not.toBeNull();
  await expect(told).toContainText('history still lists the pages you opened, with your answers');
  for (let steps = 0; steps < 3; steps++) {
    await page.goBack();
    await page.reload();
    await expect(page.locator('.lost')).toBeHidden();
    expect(page.url()).toContain('j=danger.none');
    const journeys = (await kept()).filter(([key]) => key.startsWith('hobnote.journey'));
    expect(journeys, page.url()).toEqual([]);
  }
  await other.reload();
  await other.goBack().catch(() => undefined);
  expect((await kept()).filter(([key]) => key.startsWith('hobnote.journey'))).toEqual([]);
  // Who goes on answering has a journey again.
  await answerLink(page, 'unsure').click();
  await expect
    .poll(async () => (await kept()).some(([key]) => key === 'hobnote.journey'))
    .toBe(true);
});

test('a number key answers, held down but one question, and never with Ctrl', async ({ page }) => {
  await page.goto('/door-locked/since/#' + formatFragment(to('since')));
  await expect(answerLink(page, 'unsure')).toHaveAttribute('href', /j=/);
  const second = await page.locator('.answers a').nth(1).getAttribute('data-answer');
  await page.evaluate(() => {
    for (const more of [{ ctrlKey: true }, { repeat: true }])
      document.body.dispatchEvent(
        new KeyboardEvent('keydown', { key: '2', bubbles: true, ...more }),
      );
  });
  await expect(page).toHaveURL(/\/since\//);
  await page.keyboard.press('2');
  await expect(page).toHaveURL(new RegExp(`since\\.${second ?? ''}(?:&|$)`));
});

test('a number typed into the field of the display is text', async ({ page }) => {
  const write = '/door-locked/error-write-cold/#' + formatFragment(to('error-write-cold'));
  await page.goto(write);
  await page.locator('[data-error-field] input').press('1');
  await expect(page.locator('[data-error-field] input')).toHaveValue('1');
  await expect(page).toHaveURL(/error-write/);
});
