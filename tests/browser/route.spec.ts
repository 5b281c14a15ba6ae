// The technician's next day: codes in, damaged lines mended in place, an order, what to load, files out.
import { readFileSync } from 'node:fs';
import type { Locator, Page, TestInfo } from '@playwright/test';
import ICAL from 'ical.js';
import { routeSchema } from '../../src/cli/route-json.ts';
import { damaged, publishedCodebooks, sampleCodes } from '../unit/route/support/codes.ts';
import { axe } from './support/axe.ts';
import { DESK, expect, test } from './support/fixtures.ts';
import { noSidewaysScroll } from './support/layout.ts';

const codes = sampleCodes(publishedCodebooks(), 500);
const [a = '', b = '', c = '', d = ''] = codes;

const field = (page: Page): Locator => page.getByLabel('Note codes');
const said = (page: Page): Locator => page.locator('.said');
const rows = (page: Page): Locator => page.locator('.visit');
const open = async (page: Page): Promise<void> => {
  await page.goto('round/');
  await expect(field(page)).toBeVisible();
};
const add = async (page: Page, text: string): Promise<void> => {
  const fold = page.locator('.add');
  if (!(await fold.evaluate((one) => (one as HTMLDetailsElement).open)))
    await fold.locator(':scope > summary').click();
  await field(page).fill(text);
  await page.getByRole('button', { name: 'Add to route' }).click();
};
const order = (page: Page): Promise<string[]> => page.locator('.visit h3').allTextContents();
const save = async (page: Page, what: string, info: TestInfo): Promise<string> => {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: what }).click();
  const path = info.outputPath(what.replaceAll(' ', '-'));
  await (await coming).saveAs(path);
  return readFileSync(path, 'utf8');
};

test('damaged lines are mended in place, and none is dropped', async ({ page }) => {
  await open(page);
  await axe(page);
  await add(page, [a, damaged(b, 1), 'nonsense', c].join('\n'));
  await expect(said(page)).toHaveText('2 visits added. Fix 2 lines.');
  await expect(rows(page)).toHaveCount(2);
  await expect(field(page)).toHaveValue('');
  await axe(page);
  await noSidewaysScroll(page);

  // A repaired code is a proposal, letter under letter: a visit only when it is confirmed.
  await expect(page.locator('.repair .compared .changed')).toHaveText([/^..$/]);
  await page.getByRole('button', { name: 'Yes, that is what the caller reads' }).click();
  await expect(rows(page)).toHaveCount(3);
  const line = page.getByLabel('Code in row 3');
  await expect(line).toHaveValue('nonsense');
  await expect(line).toHaveAccessibleDescription(/sign U after 0 characters|characters/i);
  await line.fill(d.slice(0, -1));
  await line.press('Enter');
  await page.getByRole('button', { name: 'No', exact: true }).click();
  await expect(line).toBeFocused();
  await expect(line).toHaveAccessibleDescription(/Not confirmed/);
  await axe(page);
  await line.fill(d);
  await line.press('Enter');
  await expect(rows(page)).toHaveCount(4);
  await expect(page.locator('.mend')).toHaveCount(0);
  await expect(page.locator('#visits-title')).toBeFocused();
  expect((await order(page)).toSorted()).toEqual([a, b, c, d].toSorted());
});

test('what is refused stays in the field, with its reason', async ({ page }) => {
  await open(page);
  for (const [text, words] of [
    [' \n', 'No code yet'],
    [`${a}\n`.repeat(501), 'room for 500 more'],
    [`code,name\n${a},"open\n`, 'row 2 a quotation mark'],
  ] as const) {
    await add(page, text);
    await expect(page.locator('#codes-problem')).toContainText(words);
    await expect(field(page)).toHaveValue(text);
    await expect(field(page)).toBeFocused();
    await expect(rows(page)).toHaveCount(0);
  }
  await axe(page);
});

test('a table goes in and out: columns carried, formulas neutralised, JSON by its schema', async ({
  page,
}, info) => {
  await open(page);
  const table = `Name,Ticket,Phone\n"=1+1",${a},+12075550142\n<b>B</b>,${b},@x\nC,${damaged(c, 1)},555-0100\n`;
  await page.locator('.enter input[type=file]').setInputFiles({
    name: 'day.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(table),
  });
  await expect(said(page)).toContainText('Codes came from the column “Ticket”.');
  await expect(rows(page)).toHaveCount(2);
  await expect(page.locator('.visit h3').filter({ hasText: '<b>B</b>' })).toHaveCount(1);

  const csv = await save(page, 'Save as CSV', info);
  for (const cell of [`"'=1+1"`, `"'+12075550142"`, `"'@x"`, damaged(c, 1)])
    expect(csv).toContain(cell);
  const json = routeSchema.parse(JSON.parse(await save(page, 'Save as JSON', info)));
  expect(json.visits.map(({ columns }) => columns['Name'])).toEqual(await order(page));
  expect(json.unread).toHaveLength(1);

  // Loaded again the codes are there, and nothing about a person; the file brings it all back.
  await page.reload();
  await expect(rows(page)).toHaveCount(2);
  await expect(page.locator('.lost')).toContainText('Only codes stay');
  expect((await order(page)).toSorted()).toEqual([a, b].toSorted());
  const kept = await page.evaluate(() =>
    JSON.stringify([{ ...localStorage }, { ...sessionStorage }]),
  );
  for (const cell of ['<b>', '=1+1', '+1207', '@x', 'Name']) expect(kept).not.toContain(cell);
  await page.getByRole('button', { name: 'Clear route' }).click();
  await page.getByRole('button', { name: /^Yes, remove/ }).click();
  await expect(rows(page)).toHaveCount(0);
  await add(page, csv);
  await expect(rows(page)).toHaveCount(2);
  await expect(page.locator('.mend li form')).toHaveCount(1);
});

test('the order is changed by keyboard alone, told, and sorted again', async ({ page }) => {
  await open(page);
  await add(page, [a, b, c, d].join('\n'));
  await expect(rows(page)).toHaveCount(4);
  const before = await order(page);
  const [first = ''] = before;
  const down = page.getByRole('button', { name: `Move ${first} down` });
  await down.focus();
  for (let place = 2; place <= 4; place++) {
    await page.keyboard.press('Enter');
    await expect(said(page)).toHaveText(`${first} is now visit ${String(place)} of 4.`);
  }
  expect(await order(page)).toEqual([...before.slice(1), first]);
  // Down is no way any more: the focus is on the one that is left.
  await expect(page.getByRole('button', { name: `Move ${first} up` })).toBeFocused();
  await axe(page);
  await page.getByRole('button', { name: 'Sort by urgency' }).press('Enter');
  expect(await order(page)).toEqual(before);
  await page.getByRole('button', { name: `More about ${first}` }).press('Enter');
  await axe(page);
  await page.getByRole('button', { name: `Remove ${first}` }).press('Enter');
  await expect(rows(page)).toHaveCount(3);
  await page.getByRole('button', { name: `Put ${first} back` }).press('Enter');
  expect(await order(page)).toEqual(before);
});

test('500 visits: the page answers all the while', async ({ page }) => {
  await open(page);
  await field(page).fill(codes.join('\n'));
  // What is typed while the visits are worked out stays: at once, however fast the machine is.
  await field(page).evaluate((codes: HTMLTextAreaElement) => {
    codes.form?.requestSubmit();
    codes.value = '4GK5';
    codes.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
  await expect(said(page)).toHaveText('500 visits added.');
  await expect(page.getByLabel('Note codes')).toHaveValue('4GK5');
  await expect(rows(page)).toHaveCount(500);
  await expect(page.locator('.load .stock li').first()).toBeVisible();
  // Only what is looked at is drawn in full; a search finds the others, and paper has them all.
  const [last, whole] = [rows(page).last(), page.locator('.visit .head')];
  await expect(last.locator('.head')).toHaveCount(0);
  expect(await whole.count()).toBeLessThan(50);
  const find = (code: string) => (window as unknown as { find(text: string): boolean }).find(code);
  expect(await page.evaluate(find, codes.at(-1) ?? '')).toBe(true);
  await last.scrollIntoViewIfNeeded();
  await expect(last.locator('.head')).toBeVisible();
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await expect(whole).toHaveCount(500);
});

test('what a visit alone needs is asked for by model, and is beside its number', async ({
  page,
}) => {
  await open(page);
  await add(page, `code,Model\n${a},RX-100\n${b},`);
  await expect(rows(page)).toHaveCount(2);
  const own = page.locator('.load .own > li');
  await expect(own.filter({ hasText: a })).toContainText('Model RX-100');
  await expect(own.filter({ hasText: b })).toContainText('Call for the model.');
});

test('figures that cannot be fetched: said in words, tried again, nothing lost', async ({
  page,
  watched,
}) => {
  watched.expect(/request failed .*\.preview\./);
  watched.expect(/console error .*ERR_FAILED/);
  const parts = '**/_astro/*/*.preview.*.json';
  await page.route(parts, (route) => route.abort());
  await open(page);
  await add(page, [a, b, 'nonsense'].join('\n'));
  await expect(page.getByRole('alert').filter({ hasText: 'could not be loaded' })).toBeVisible();
  await expect(rows(page)).toHaveCount(2);
  await expect(rows(page).getByText(/To find the fault|min/)).toHaveCount(0);
  await axe(page);
  await page.locator('.add > summary').click();
  await field(page).fill(c);
  // Still cut off: it says so again.
  const again = page.getByRole('button', { name: 'Try again' });
  await again.click();
  await expect(again).toBeVisible();
  await page.unroute(parts);
  await again.click();
  await expect(again).toBeHidden();
  await expect(page.locator('.load .own > li').first()).toBeVisible();
  expect((await order(page)).toSorted()).toEqual([a, b].toSorted());
  await expect(page.getByLabel('Code in row 3')).toHaveValue('nonsense');
  await expect(field(page)).toHaveValue(c);
});

test('the browser asks before a round that is in no file is left', async ({ page }, info) => {
  const leave = () => page.close({ runBeforeUnload: true });
  await open(page);
  await add(page, a);
  await expect(rows(page)).toHaveCount(1);
  const asked = page.waitForEvent('dialog');
  await leave();
  const dialog = await asked;
  expect(dialog.type()).toBe('beforeunload');
  await dialog.dismiss();
  await expect(rows(page)).toHaveCount(1);
  // Saved, it lets go without a word.
  await save(page, 'Save as CSV', info);
  page.on('dialog', () => {
    throw new Error('asked about a saved round');
  });
  const closed = page.waitForEvent('close');
  await leave();
  await closed;
});

// Fingers use the buttons (WCAG 2.5.7).
test.describe('by mouse', () => {
  test.use({ ...DESK, viewport: { width: 1280, height: 1600 } });
  test('a visit is dragged to another place, and told', async ({ page }) => {
    await open(page);
    await add(page, [a, b, c].join('\n'));
    await expect(rows(page)).toHaveCount(3);
    const [first = '', second = '', third = ''] = await order(page);
    const grip = (place: number) => rows(page).nth(place).locator('.number');
    /** A drag begins only once the mouse has gone some way with its button down. */
    async function drag(from: number, onto: number): Promise<void> {
      await grip(0).evaluate((number) => number.scrollIntoView({ block: 'center' }));
      const box = async (place: number) => (await grip(place).boundingBox()) ?? { x: 0, y: 0 };
      const [start, end] = [await box(from), await box(onto)];
      await page.mouse.move(start.x + 20, start.y + 20);
      await page.mouse.down();
      await page.mouse.move(start.x + 30, start.y + 30, { steps: 5 });
      await page.mouse.move(end.x + 20, end.y + 20, { steps: 10 });
      await page.mouse.up();
    }
    await drag(0, 1);
    await expect(said(page)).toHaveText(`${first} is now visit 2 of 3.`);
    expect(await order(page)).toEqual([second, first, third]);
    await drag(1, 0);
    await expect(said(page)).toHaveText(`${first} is now visit 1 of 3.`);
    expect(await order(page)).toEqual([first, second, third]);
  });
});

test('a file that is refused stays a file: nothing of it is written into the field', async ({
  page,
}) => {
  await open(page);
  const problem = page.locator('#codes-problem');
  for (const [buffer, words] of [
    [Buffer.from(`code,Name\n${a},Ren\u00e9\n`, 'latin1'), 'CSV UTF-8'],
    [Buffer.from(`code\n${a}\n`, 'utf16le'), 'CSV UTF-8'],
    [Buffer.from([0x50, 0x4b, 3, 4, 0, 0xff]), 'CSV UTF-8'],
    [Buffer.alloc(1_000_000, '\n'), 'No code yet'],
    [Buffer.alloc(1_000_001, 'a\n'), 'too long'],
    [Buffer.from(`code,x\n${a},"a"b\n`), 'row 2'],
  ] as const) {
    const begun = Date.now();
    await page
      .locator('.enter input[type=file]')
      .setInputFiles({ name: 'day.csv', mimeType: 'text/csv', buffer });
    await expect(problem).toContainText(words);
    await expect(field(page)).toHaveValue('');
    expect(Date.now() - begun).toBeLessThan(15_000);
  }
  const utf16 = Buffer.from(`\ufeffcode,Name\n${a},Ren\u00e9\n`, 'utf16le');
  for (const buffer of [utf16, Buffer.from(utf16).swap16()]) {
    await page
      .locator('.enter input[type=file]')
      .setInputFiles({ name: 'day.csv', mimeType: 'text/csv', buffer });
    await expect(said(page)).toContainText('1 visit added.');
  }
  await expect(page.locator('.visit h3').filter({ hasText: 'René' })).toHaveCount(2);
});

/** Eight visits, two of them without a code. */
const day = [
  'Time,Name,Address,Phone,Code',
  ...codes
    .slice(0, 6)
    .map(
      (code, i) =>
        `${String(8 + i)}-${String(9 + i)},N${String(i)},${String(i)} Long Lane,555-010${String(i)},${code}`,
    ),
  '3-5 pm,Ann Lane,12 Long Lane,555-0107,no code yet',
  '7-8,Bo Quill,13 Long Lane,555-0108,',
].join('\n');
const pages = (pdf: Buffer): number =>
  pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;

test('a day as jobs: by time, one page for all of them, a page each, a calendar', async ({
  page,
}, info) => {
  await open(page);
  await add(page, day);
  await expect(rows(page)).toHaveCount(8);
  await expect(rows(page).filter({ hasText: 'No code yet' })).toHaveCount(2);
  await page.getByRole('button', { name: 'Sort by time' }).click();
  expect((await order(page)).slice(0, 2)).toEqual(['Bo Quill', 'N0']);
  expect((await order(page)).at(-1)).toBe('Ann Lane');
  // The day to scale, each visit a block, and as many brackets as were promised.
  await expect(page.locator('.time-bar .block')).toHaveText([
    '1',
    '2',
    '3',
    '4',
    '5',
    '6',
    '7',
    '8',
  ]);
  // In an emergency nobody plans parts or minutes.
  const danger = page.locator('.visit[data-urgency=emergency]');
  await expect(danger.first()).toContainText('Help comes first.');
  await expect(danger.filter({ hasText: /Likely faults|Parts for|About \d/ })).toHaveCount(0);
  await axe(page);
  await noSidewaysScroll(page);
  expect(pages(await page.pdf({ format: 'Letter' }))).toBe(1);
  await page.evaluate(() => {
    globalThis.print = () => undefined;
  });
  await page.getByRole('button', { name: 'Print job sheets' }).click();
  await expect(page.locator('.sheets')).toBeAttached();
  expect(pages(await page.pdf({ format: 'Letter' }))).toBe(8);

  const calendar = await save(page, 'Save calendar file', info);
  const events = new ICAL.Component(ICAL.parse(calendar) as unknown[]).getAllSubcomponents(
    'vevent',
  );
  const found = events.map((event) => new ICAL.Event(event));
  expect(found.map(({ location }) => location)).toContain('12 Long Lane');
  expect(found.map(({ startDate }) => startDate.hour)).toEqual([7, 8, 9, 10, 11, 12, 13, 15]);
});

test.describe('on a desk', () => {
  test.use(DESK);
  test('a route of seven is one screen: the jobs, then what to load', async ({ page }) => {
    await open(page);
    await add(page, day.split('\n').slice(0, -1).join('\n'));
    await expect(rows(page)).toHaveCount(7);
    const bottom = (what: string) =>
      page
        .locator(what)
        .last()
        .evaluate((one) => Math.ceil(one.getBoundingClientRect().bottom));
    await expect(page.locator('.load .own')).toBeVisible();
    expect(await bottom('.visit')).toBeLessThan(await bottom('.load .own'));
    expect(await bottom('.load .own')).toBeLessThanOrEqual(800);
    expect(await page.evaluate(() => scrollY)).toBe(0);
    // A flag is never cut.
    for (const flag of await page.locator('.visit .flags li').all())
      expect(await flag.evaluate((one) => one.scrollWidth <= one.clientWidth)).toBe(true);
    await axe(page);
  });
});

test('a job of the desk, in a mail, is a visit with its caller; one by hand has no code', async ({
  page,
}) => {
  await open(page);
  await add(
    page,
    `Hi Bo,\n> Job: TODAY: x\n> Name: Ann Lane\n> Preferred time: 8-10\n> Code: ${a}\n`,
  );
  await expect(rows(page)).toHaveCount(1);
  await expect(rows(page)).toContainText('Ann Lane');
  await page.locator('.add > summary').click();
  await page.locator('.by-hand > summary').click();
  await page.getByLabel('Name', { exact: true }).fill('Cy Marsh');
  await page.getByRole('button', { name: 'Add visit', exact: true }).click();
  await expect(rows(page)).toHaveCount(2);
  await expect(rows(page).filter({ hasText: 'Cy Marsh' })).toContainText('No code yet');
  await axe(page);
});
