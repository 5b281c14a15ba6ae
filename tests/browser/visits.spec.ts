// What a visit turned out to be, kept on the technician's device, and as a file.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import type { Locator, Page, TestInfo } from '@playwright/test';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { noSidewaysScroll } from './support/layout.ts';
import { CODE, open } from './support/preview.ts';

const record = (page: Page): Locator => page.locator('.record-fold');
const list = (page: Page): Locator => page.locator('.visits-fold');
const unfold = async (part: Locator): Promise<void> => {
  await part.locator('summary').click();
  await expect(part.locator('[role=status]')).toBeAttached();
};
const fault = (page: Page): Locator => page.getByLabel('The fault you found');
const keep = (page: Page): Locator =>
  record(page).getByRole('button', { name: /^(?:Save this|Replace the saved) visit$/ });
const said = (part: Locator): Locator => part.getByRole('status');
const file = (visits: unknown, more: object = {}) => ({
  name: 'visits.json',
  mimeType: 'application/json',
  buffer: Buffer.from(
    typeof visits === 'string'
      ? visits
      : JSON.stringify({
          format: 'hobnote-visits',
          version: 1,
          guide: 'door-locked',
          visits,
          ...more,
        }),
  ),
});
const VISIT = { answers: { 'check.latch-motor': 'open' }, fault: 'other', parts: [] };

/** Open the note and keep a visit with its first named fault and first part. */
async function keepOne(page: Page): Promise<string> {
  await open(page, `#c=${CODE}`);
  await unfold(record(page));
  await fault(page).selectOption({ index: 1 });
  await record(page).getByRole('checkbox').first().check();
  await keep(page).click();
  await expect(said(record(page))).toHaveText('Saved on this device.');
  return fault(page).inputValue();
}

/** Write the one visit there is to a file; its path. */
async function toFile(page: Page, info: TestInfo): Promise<string> {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Export 1 visit' }).click();
  const path = info.outputPath('visits.json');
  await (await coming).saveAs(path);
  return path;
}

test('a visit is kept over a reload, is written to a file that `learn` reads, and goes', async ({
  page,
}, info) => {
  const found = await keepOne(page);
  await axe(page);
  await page.reload();
  await unfold(record(page));
  await expect(record(page)).toContainText('Saved for this code:');
  await unfold(list(page));
  await expect(list(page).locator('li')).toHaveCount(1);
  await axe(page);
  await noSidewaysScroll(page);

  const path = await toFile(page, info);
  const written = JSON.parse(readFileSync(path, 'utf8')) as {
    visits: { fault: string; answers: Record<string, string>; parts: string[] }[];
  };
  expect(written.visits).toHaveLength(1);
  expect(written.visits[0]?.fault).toBe(found);
  expect(Object.values(written.visits[0]?.answers ?? {})).toContain('over-4');
  expect(written.visits[0]?.parts).toHaveLength(1);
  expect(JSON.stringify(written), 'the code stays here').not.toContain(CODE);
  const learned = execFileSync(process.execPath, ['src/cli/learn.ts', path], { encoding: 'utf8' });
  expect(learned).toContain('1 visits of door-locked');

  // The same file again: nothing is counted twice.
  await list(page).locator('input[type=file]').setInputFiles(path);
  await expect(said(list(page))).toHaveText('0 visits added. 1 was already here.');
  await list(page).getByRole('button', { name: 'Delete', exact: true }).click();
  await expect(list(page).locator('li')).toHaveCount(0);
  await expect(said(list(page))).toBeFocused();
  await list(page).locator('input[type=file]').setInputFiles(path);
  await expect(list(page).locator('li')).toHaveCount(1);
});

test('keeping again replaces what was kept for the same code', async ({ page }) => {
  await keepOne(page);
  await expect(record(page)).toContainText('Saved for this code:');
  await fault(page).selectOption('other');
  await keep(page).click();
  await expect(record(page)).toContainText('Saved for this code: Something not on this list');
  await unfold(list(page));
  await expect(list(page).locator('li')).toHaveCount(1);
});

test('a file written before a visit was kept anew does not count it twice', async ({
  page,
}, info) => {
  await keepOne(page);
  await unfold(list(page));
  const path = await toFile(page, info);
  await fault(page).selectOption('other');
  await keep(page).click();
  await expect(list(page).locator('li')).toContainText('Something not on this list');
  await list(page).locator('input[type=file]').setInputFiles(path);
  await expect(said(list(page))).toHaveText('0 visits added. 1 was already here.');
  await expect(list(page).locator('li')).toHaveCount(1);
});

test('without a fault nothing is kept, and the field says so', async ({ page }) => {
  await open(page, `#c=${CODE}`);
  await unfold(record(page));
  await keep(page).click();
  await expect(fault(page)).toBeFocused();
  await expect(fault(page)).toHaveAccessibleDescription(/Choose what you found/);
  await axe(page);
});

test('files that are not right are refused with what to do', async ({ page }) => {
  await open(page);
  await unfold(list(page));
  const alert = list(page).getByRole('alert');
  const told = new Set<string>();
  const cases = [
    file('{'),
    file('[]'),
    file([{ ...VISIT, name: 'somebody' }]),
    file([VISIT], { version: 3 }),
    file([VISIT], { guide: 'no-such-guide' }),
    file([{ ...VISIT, fault: 'no-such-fault' }]),
    file([{ ...VISIT, parts: ['no-such-part'] }]),
    file([{ ...VISIT, answers: { somebody: 'some-street' } }]),
    file('<img src=x onerror=alert(1)>'),
  ];
  for (const one of cases) {
    await list(page).locator('input[type=file]').setInputFiles(one);
    await expect(alert).toBeVisible();
    await expect.poll(async () => told.has((await alert.textContent()) ?? '')).toBe(false);
    told.add((await alert.textContent()) ?? '');
    await expect(list(page).locator('ol')).toHaveCount(0);
  }
  expect(told.size).toBe(cases.length);
  await axe(page);
  await list(page)
    .locator('input[type=file]')
    .setInputFiles(file([VISIT, VISIT]));
  await expect(said(list(page))).toHaveText('2 visits added.');
  await expect(alert).toHaveCount(0);
});

test('all are taken out only when asked twice; other tabs see it', async ({ page, context }) => {
  await open(page);
  await unfold(list(page));
  const second = await context.newPage();
  await open(second);
  await unfold(list(second));
  await list(page)
    .locator('input[type=file]')
    .setInputFiles(file([VISIT, VISIT, VISIT]));
  await expect(list(second).locator('li')).toHaveCount(3);
  await list(second).getByRole('button', { name: 'Delete all' }).click();
  const yes = list(second).getByRole('button', { name: 'Yes, delete all 3 visits for good' });
  await expect(yes).toBeFocused();
  await axe(second);
  await list(second).getByRole('button', { name: 'No, keep them' }).click();
  await expect(list(page).locator('li')).toHaveCount(3);
  await list(second).getByRole('button', { name: 'Delete all' }).click();
  await yes.click();
  await expect(list(page).locator('li')).toHaveCount(0);
});

for (const [what, error, words] of [
  ['is switched off', 'SecurityError', 'Your browser saves nothing in this window'],
  ['is full', 'QuotaExceededError', 'The device is full'],
  ['is of a newer site', 'VersionError', 'Another tab has a newer version'],
  ['breaks', 'UnknownError', 'The browser did not save it (UnknownError)'],
] as const)
  test(`storage that ${what} loses nothing that was entered`, async ({ page }) => {
    await page.addInitScript((name) => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('refused for the test', name);
      };
    }, error);
    await open(page, `#c=${CODE}`);
    await unfold(record(page));
    await fault(page).selectOption('other');
    await keep(page).click();
    await expect(record(page).getByRole('alert')).toContainText(words);
    const text = await page.getByLabel('Visit as file text').inputValue();
    expect((JSON.parse(text) as { visits: unknown[] }).visits).toHaveLength(1);
    await expect(fault(page)).toHaveValue('other');
    await axe(page);
  });

test('by keyboard alone', async ({ page }) => {
  await open(page, `#c=${CODE}`);
  await record(page).locator('summary').focus();
  await page.keyboard.press('Enter');
  await expect(fault(page)).toBeVisible();
  await page.keyboard.press('Tab');
  await expect(fault(page)).toBeFocused();
  await page.keyboard.press('End');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  for (let presses = 0; presses < 30; presses++) {
    if (await keep(page).evaluate((button) => button === document.activeElement)) break;
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Enter');
  await expect(record(page)).toContainText('Saved for this code: Nothing wrong found');
});

test('a part that cannot be fetched says so and can be opened again', async ({ page, watched }) => {
  watched.expect(/Visits\./);
  await page.route(/Visits\.[^/]*\.js$/, (route) => route.abort());
  await open(page);
  await list(page).locator('summary').click();
  await expect(list(page).getByRole('alert')).toContainText('could not be loaded');
});

/** Records written past the site: what another release, an extension or a failing disk leaves. */
const put = (page: Page, records: string) =>
  page.evaluate(async (source) => {
    const opening = indexedDB.open('hobnote');
    const db = await new Promise<IDBDatabase>((done) => {
      opening.onsuccess = () => done(opening.result);
    });
    const change = db.transaction('visits', 'readwrite');
    const made = new Map<string, () => unknown[]>([
      [
        'odd',
        () => {
          const round: Record<string, unknown> = {};
          round['self'] = round;
          const visit = { answers: {}, fault: 'other', parts: [] };
          const good = { id: 'g', guide: 'door-locked', code: '', visit };
          return [
            ...[
              {},
              [],
              7,
              'text',
              null,
              undefined,
              round,
              { big: 10n },
              new Date(0),
              new Blob(['x']),
            ],
            ...[
              { ...good, id: 'a', visit: null },
              { ...good, id: 'b', guide: 7 },
              { ...good, id: 'c', visit: { ...visit, parts: 'sensor' } },
            ],
            ...[
              { ...good, id: 'd', visit: { ...visit, fault: '<img src=x>' } },
              { ...good, id: 'e', code: undefined },
            ],
            good,
          ];
        },
      ],
      [
        'many',
        () =>
          Array.from({ length: 10_000 }, (_, n) => ({
            ...{ id: `many${String(n)}`, guide: 'door-locked', code: '' },
            visit: { answers: { 'check.latch-motor': 'open' }, fault: 'other', parts: [] },
          })),
      ],
    ]);
    for (const record of made.get(source)?.() ?? []) change.objectStore('visits').add(record);
    await new Promise((done) => {
      change.oncomplete = done;
    });
    db.close();
  }, records);

test('records that are no visits are set aside and exported; the list is not lost', async ({
  page,
}, info) => {
  await open(page);
  await unfold(list(page));
  await put(page, 'odd');
  await page.reload();
  await unfold(list(page));
  await expect(list(page).locator('li')).toHaveCount(1);
  await expect(list(page)).toContainText('15 saved visits are damaged');
  const coming = page.waitForEvent('download');
  await list(page).getByRole('button', { name: 'Export damaged visits' }).click();
  const path = info.outputPath('damaged.json');
  await (await coming).saveAs(path);
  expect(JSON.parse(readFileSync(path, 'utf8'))).toHaveLength(15);
  await axe(page);
  await list(page)
    .locator('input[type=file]')
    .setInputFiles(file([VISIT]));
  await expect(said(list(page))).toHaveText('1 visit added.');
  await list(page).getByRole('button', { name: 'Delete all' }).click();
  await list(page).getByRole('button', { name: 'Yes, delete all 17 visits for good' }).click();
  await expect(list(page)).not.toContainText('damaged');
});

test('a database without its store is made anew', async ({ page }) => {
  await page.goto('/about/');
  await page.evaluate(async () => {
    const opening = indexedDB.open('hobnote', 1);
    await new Promise((done) => {
      opening.onsuccess = done;
    });
    opening.result.close();
  });
  await keepOne(page);
  await unfold(list(page));
  await expect(list(page).locator('li')).toHaveCount(1);
});

test('10,000 visits: the page answers all the while, and all are exported', async ({
  page,
}, info) => {
  test.setTimeout(120_000);
  await open(page);
  await unfold(list(page));
  await put(page, 'many');
  await page.reload();
  await page.evaluate(() => {
    const tasks: number[] = [];
    Object.assign(globalThis, { tasks });
    new PerformanceObserver((seen) => {
      for (const { duration } of seen.getEntries()) tasks.push(duration);
    }).observe({ type: 'longtask', buffered: false });
  });
  const longest = () =>
    page.evaluate(() =>
      Math.max(0, ...(globalThis as unknown as { tasks: number[] }).tasks.splice(0)),
    );
  const begun = Date.now();
  await list(page).locator('summary').click();
  await expect(list(page).locator('li')).toHaveCount(100);
  const opened = Date.now() - begun;
  const opening = await longest();
  await list(page).getByRole('button', { name: 'Delete', exact: true }).first().click();
  await expect(said(list(page))).toHaveText('Visit deleted.');
  await expect(list(page)).toContainText('Export 9999 visits');
  const changing = await longest();
  console.log(
    `10,000 visits: opened in ${String(opened)} ms, longest task ${String(opening)} ms, on a change ${String(changing)} ms`,
  );
  // Frozen for seconds before; one task now is the browser's own copying of the records.
  expect(Math.max(opening, changing)).toBeLessThan(1000);
  await list(page).getByRole('button', { name: 'Show 100 earlier visits' }).click();
  await expect(list(page).locator('li')).toHaveCount(200);
  const coming = page.waitForEvent('download');
  await list(page).getByRole('button', { name: 'Export 9999 visits' }).click();
  const path = info.outputPath('all.json');
  await (await coming).saveAs(path);
  expect((JSON.parse(readFileSync(path, 'utf8')) as { visits: unknown[] }).visits).toHaveLength(
    9999,
  );
});
