// Whole calls as phone staff have them, by keys alone; how many keys each takes is told.
import type { Page } from '@playwright/test';
import { staffLanguages } from '../../src/content/load.ts';
import { namespaceText } from '../../src/site/words.ts';
import { axe } from './support/axe.ts';
import { Counted, HUM, openDesk, rows, say, seen, status } from './support/desk.ts';
import { DESK, expect, test } from './support/fixtures.ts';
import { addressOf, codeFor, to } from './support/note.ts';

test.use({ ...DESK, permissions: ['clipboard-read', 'clipboard-write'] });

interface Said {
  readonly title: string;
  readonly now: readonly string[];
}
type Titles = Readonly<Record<'danger' | 'since', { title: string }>>;
const { since } = namespaceText('en', 'door-locked') as Titles;
const clipboard = (page: Page) => page.evaluate(() => navigator.clipboard.readText());
const job = (page: Page) => page.locator('#desk-job');

/** Who calls, typed from field to field; not counted with the keys of the call. */
async function write(page: Page, ...fields: readonly string[]): Promise<void> {
  await page.keyboard.press('p');
  for (const [nth, text] of fields.entries()) {
    if (nth > 0) await page.keyboard.press('Tab');
    await page.keyboard.type(text);
  }
  await page.keyboard.press('Escape');
}

test('an ordinary booking takes no more than 25 keys beside the caller’s data', async ({
  page,
}) => {
  await page.goto('/desk/');
  await seen(page);
  // Before anything is asked: a caller who drops now can be called back.
  await write(page, 'Ann Example', '(207) 555-0123', '1 Lantern Lane', 'QX-77');
  const keys = new Counted(page);
  await keys.press('1');
  await keys.answer(to('stop-book').journey);
  await keys.press('Space', 'j');
  await expect(status(page)).toHaveText('Job text copied.');
  const text = await clipboard(page);
  expect(text).toMatch(/\nCallback number: \(207\) 555-0123\n/);
  expect(text).toContain('I will book your visit now.');
  expect(text).not.toContain('Call us at');
  await page.keyboard.press('p');
  await page.keyboard.press('End');
  await page.keyboard.type(' B.');
  await page.keyboard.press('Escape');
  await expect(page.locator('.job')).toContainText('Changed since you copied it.');
  await keys.press('j', 'n', 'Enter');
  await expect(say(page)).toHaveText('What is wrong with the range?');
  console.log(`booking: ${String(keys.presses)} keys`);
  expect(keys.presses).toBeLessThanOrEqual(25);
});

test('two problems of one caller are one job, on desk, preview and route', async ({ page }) => {
  await page.goto('/desk/');
  await seen(page);
  await write(page, 'Ann Example', '(207) 555-0123', '1 Lantern Lane');
  const keys = new Counted(page);
  await keys.press('1');
  await keys.answer(to('stop-book').journey);
  const first = (await page.locator('.code-out .groups strong').allTextContents()).join('-');
  await keys.press('w', '2');
  // Who calls stays; of the problem before nothing does.
  await expect(page.locator('#desk-name')).toHaveValue('Ann Example');
  await expect(rows(page)).toHaveCount(0);
  await keys.press('-');
  await page.getByLabel('Taken by').fill('Sam');
  await page.keyboard.press('Escape');
  // What the code of the first problem says comes with it.
  await expect(job(page)).toHaveValue(/\nWhat to load: .+%/);
  await keys.press('j');
  await expect(status(page)).toHaveText('Job text copied.');
  const text = await clipboard(page);
  expect(text).toMatch(/^Job: .*: Self-clean won’t start; The oven door stays locked\n/);
  expect(text).toContain('\nTaken by: Sam\n');
  expect(text).toMatch(new RegExp(`\\nCode: [0-9A-Z-]{19,} \\+ ${first} `));
  expect(text.match(/\nName: Ann Example/g)).toHaveLength(1);

  await page.goto('/preview/');
  await page.getByLabel('Note code').fill(text);
  await page.locator('form.reader').evaluate((form: HTMLFormElement) => form.requestSubmit());
  // One visit: both outcomes, one list of what to load and one order of checks, nothing twice.
  await expect(page.locator('.outcome')).toHaveCount(2);
  await expect(page.locator('.also')).toHaveCount(0);
  await expect(page.locator('.work .ranking h2')).toHaveText([
    'Self-clean won’t start',
    'The oven door stays locked',
  ]);
  for (const list of ['.load .parts li', '.plan .checks .title']) {
    const lines = await page.locator(list).allTextContents();
    expect(lines.length, list).toBeGreaterThan(1);
    expect(new Set(lines).size, list).toBe(lines.length);
  }
  await axe(page);
  await page.waitForLoadState('networkidle');
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await expect(page.locator('.sheet .code')).toHaveCount(2);
  await expect(page.locator('.sheet .boxes').first()).toBeVisible();
  const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g), 'pages').toHaveLength(1);
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  await page.emulateMedia({ media: 'screen' });

  await page.goto('/round/');
  await page.locator('#codes').fill(text);
  await page.getByRole('button', { name: 'Add to route' }).click();
  await expect(page.locator('.visit h3')).toHaveText(['Ann Example', 'Ann Example']);
  await expect(page.locator('.visit').last()).toContainText('Same visit as 1');
});

test('what the answers tell of the range is filled in, and goes when they change', async ({
  page,
}) => {
  await page.goto('/desk/#g=wrong-temperature&j=danger.none~what.too-hot');
  await seen(page);
  const heat = page.getByLabel('Has it been baking normally lately?');
  await expect(heat).toHaveValue('too-hot');
  expect(addressOf(page).details).toEqual({ heat: 'too-hot' });
  await expect(page.locator('.code-out')).toContainText('Fill in the details first');
  await page.goto('/desk/#g=wrong-temperature&j=danger.none~what.too-cool');
  await expect(heat).toHaveValue('too-cool');
});

test('booked at once, the guide goes to the caller by link', async ({ page }) => {
  await openDesk(page);
  const keys = new Counted(page);
  await write(page, 'Ann Example', '(207) 555-0123');
  await keys.press('-', 'l');
  const sms = new URL((await page.locator('.link a').first().getAttribute('href')) ?? '');
  expect([sms.protocol, sms.pathname]).toEqual(['sms:', '2075550123']);
  const link = /\bhttp\S+$/.exec(sms.searchParams.get('body') ?? '')?.[0] ?? '';
  expect(link).not.toMatch(/Ann|0123/);
  await page.getByRole('button', { name: 'Copy', exact: true }).click();
  expect(await clipboard(page)).toContain(link);
  await axe(page);
  await page.goto(link);
  await expect(page.locator('h1')).toHaveText(since.title);
});

test('a talkative caller says two things at once, and corrects one', async ({ page }) => {
  await openDesk(page);
  const keys = new Counted(page);
  await keys.answer(HUM.slice(0, 2));
  await keys.press('a');
  await keys.type('padlock');
  await keys.press('Enter');
  await expect(status(page)).toContainText('Noted.');
  await expect(page.locator('.later')).toContainText('1 later answer');
  await keys.answer(HUM.slice(2, 3));
  // What was said before is taken when its question comes.
  expect(addressOf(page).journey).toEqual(HUM.slice(0, 4));
  await keys.press('ArrowLeft', 'ArrowLeft', 'ArrowLeft', '1');
  expect(addressOf(page).journey[1]?.answer).not.toBe(HUM[1]?.answer);
  await keys.press('u');
  expect(addressOf(page).journey).toEqual(HUM.slice(0, 4));
  await keys.answer(HUM.slice(4));
  expect(addressOf(page).journey).toEqual(HUM);
  console.log(`talkative: ${String(keys.presses)} keys`);
});

test('gas in mid-call: address first, then out and call from there', async ({ page }) => {
  await openDesk(page, { journey: HUM.slice(0, 6) });
  const keys = new Counted(page);
  await keys.press('-', 'd', '3');
  await expect(page.locator('.end')).toContainText('First: address and callback number');
  await expect(page.locator('.call-note')).toHaveText(/^First tell me your address/);
  await expect(page.locator('.aloud-more li').first()).toContainText(
    'hang up and get everyone out',
  );
  await expect(page.locator('.end')).not.toContainText('Do not use a phone');
  await write(page, 'Ann', '(207) 555-0123', '1 Lantern Lane');
  await expect(page.locator('.end')).not.toContainText('First: address');
  await keys.press('Space', 'j');
  expect(await clipboard(page)).toMatch(/^Job: EMERGENCY/);
  await axe(page);
  console.log(`gas: ${String(keys.presses)} keys`);
});

test('a code with a wrong and a missing character is found, and is not called unread', async ({
  page,
}) => {
  const code = codeFor(to('stop-hum'));
  const [one = '', two = '', three = '', ...rest] = code.split('-');
  const wrong = (one.startsWith('7') ? '8' : '7') + one.slice(1);
  await openDesk(page);
  const keys = new Counted(page);
  await keys.press('k');
  await keys.type([wrong, two, three.slice(0, 3), ...rest].join(' '));
  await keys.press('Enter');
  await expect(page.locator('.repair')).toContainText('Group 3');
  await keys.press('Enter', '-');
  expect(addressOf(page).journey).toEqual(to('stop-hum').journey);
  await expect(job(page)).toHaveValue(/\(read back, correct\)/);
  // The caller's own phone showed the cautions on the way.
  await expect(job(page)).not.toHaveValue(/not marked as read/);
  console.log(`damaged code: ${String(keys.presses)} keys`);
});

test('a dropped call is taken up on another machine, with who calls and how long ago', async ({
  page,
  browser,
}) => {
  await openDesk(page);
  const keys = new Counted(page);
  await write(page, 'Ann Example', '(207) 555-0123', '1 Lantern Lane');
  await keys.answer(HUM.slice(0, 3));
  await keys.press('j');
  const text = await clipboard(page);
  expect(text).toMatch(/\nLast answer: \d{4}-\d\d-\d\d \d\d:\d\d\n/);
  const ago = text.replace(/(?<=\nLast answer: ).+/, '2026-01-02 03:04');

  const elsewhere = await browser.newContext({ ...DESK, serviceWorkers: 'block' });
  const other = await elsewhere.newPage();
  await openDesk(other);
  const theirs = new Counted(other);
  await theirs.press('k');
  await other.locator('#desk-code').fill(`> ${ago.replaceAll('\n', '\n> ')}`);
  await theirs.press('Enter');
  await expect(other.getByLabel('Name', { exact: true })).toHaveValue('Ann Example');
  await expect(other.getByLabel('Address', { exact: true })).toHaveValue('1 Lantern Lane');
  await expect(other.locator('.bar-call')).toContainText(/Last answer\s*\d{3,}:\d\d:\d\d/);
  await theirs.press('-');
  await expect(rows(other)).toHaveCount(3);
  expect(addressOf(other).journey).toEqual(HUM.slice(0, 3));
  console.log(`dropped: ${String(keys.presses)} keys, then ${String(theirs.presses)}`);
  await elsewhere.close();
});

test('a caller is spoken to in their language; the job and what is typed stay as they are', async ({
  page,
}) => {
  const [main = '', other = ''] = staffLanguages();
  test.skip(other === '', 'this copy speaks one language to staff');
  const titles = [main, other].map((language) => {
    const { danger, since: next } = namespaceText(language, 'door-locked') as Titles;
    return { danger: danger.title, since: next.title };
  });
  const [own, theirs] = titles;
  await openDesk(page);
  const keys = new Counted(page);
  await write(page, 'Ann Example');
  await keys.press('g', 'ArrowDown', 'Escape');
  await expect(say(page).locator(`[lang="${other}"]`).first()).toHaveText(theirs?.danger ?? '');
  await expect(say(page).locator('.own')).toHaveText(own?.danger ?? '');
  await axe(page);
  await keys.press('-');
  await expect(say(page)).toContainText(theirs?.since ?? '');
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Ann Example');
  // By its short name, in the staff's own language.
  await expect(job(page)).toHaveValue(/\nDanger at the range: None of these/);
  console.log(`another language: ${String(keys.presses)} keys`);
});

test('a whole call in Spanish: every question in both, the job in English', async ({ page }) => {
  test.skip(!staffLanguages().includes('es'), 'this copy does not speak Spanish');
  await page.goto('/desk/');
  await seen(page);
  await write(page, 'Ana Example', '(207) 555-0123', '1 Lantern Lane');
  const keys = new Counted(page);
  await keys.press('1', 'g', 'ArrowDown', 'Escape');
  const { journey } = to('stop-book');
  expect(journey.length).toBeGreaterThan(5);
  for (const given of journey) {
    await expect(say(page).locator('[lang="es"]')).not.toHaveText('');
    await expect(say(page).locator('.own')).not.toHaveText('');
    await keys.answer([given]);
  }
  await keys.press('Space', 'j', 'n', 'Enter');
  const text = await clipboard(page);
  const [own, theirs] = ['en', 'es'].map(
    (language) =>
      (namespaceText(language, 'desk/door-locked') as Readonly<Record<string, Said>>)['stop-book'],
  );
  expect(theirs?.title).not.toBe(own?.title);
  expect(text).toMatch(/^Job: SOON: .*\n(.*\n)*Name: Ana Example\n/);
  expect(text).toContain(own?.now[0] ?? 'no line');
  expect(text).not.toContain(theirs?.now[0] ?? '');
  console.log(`Spanish: ${String(keys.presses)} keys`);
  expect(keys.presses).toBeLessThanOrEqual(28);
});
