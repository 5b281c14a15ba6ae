import { parseFragment } from '../../src/address/fragment.ts';
import { axe } from './support/axe.ts';
import { FINE, expect, test } from './support/fixtures.ts';
import { tabOrder } from './support/keyboard.ts';
import { noSidewaysScroll, targetsAtLeast, textSize } from './support/layout.ts';
import { addressOf, codeFor, guide, open, qrOf, shownCode, to, shortest } from './support/note.ts';

test.use(FINE);

test('a finished journey gives its outcome, its numbers and the code of the library', async ({
  page,
}) => {
  const fragment = to('stop-gas');
  await open(page, fragment);
  await expect(page.getByRole('heading', { level: 2 }).first()).toContainText('gas');
  await expect(page.locator('.outcome .calls a').first()).toHaveAttribute('href', 'tel:911');
  expect(await shownCode(page)).toBe(codeFor(fragment));
  expect(await qrOf(page)).toEqual({
    path: '/preview/',
    fragment: { journey: [], details: {}, code: codeFor(fragment) },
  });
  await targetsAtLeast(page, 'main :is(a, button, input, select, textarea):visible');
  await axe(page);
});

test('every ending has its code, and every answer its way back', async ({ page }) => {
  const ends = [...guide.nodes.values()].filter(({ answers }) => answers.length === 0);
  expect(ends.length).toBeGreaterThan(15);
  for (const { id } of ends) {
    const fragment = to(id);
    await open(page, fragment);
    await expect.poll(() => shownCode(page)).toBe(codeFor(fragment));
    const links = await page
      .locator('.change')
      .evaluateAll((all) => all.map((link) => (link as HTMLAnchorElement).href));
    const places = links.map((href) => {
      const url = new URL(href);
      return [url.pathname, parseFragment(url.hash).fragment.journey];
    });
    expect(places).toEqual(
      fragment.journey.map(({ at }, index) => [
        `/${guide.id}/${at}/`,
        fragment.journey.slice(0, index),
      ]),
    );
  }
});

test('an unfinished journey leads on, and has a code too', async ({ page }) => {
  const fragment = to('near');
  await open(page, fragment);
  expect(await shownCode(page)).toBe(codeFor(fragment));
  await axe(page);
  await page.getByRole('link', { name: 'Go on' }).click();
  await expect(page).toHaveURL((url) => url.pathname === `/${guide.id}/near/`);
  await expect(page.locator('.lost')).toBeHidden();
  expect(addressOf(page).journey).toEqual(fragment.journey);
});

test('changing an answer keeps what was written and comes back with a new code', async ({
  page,
}) => {
  await open(page, to('near', { error: 'F9', model: 'AB-1', details: { fuel: 'gas' } }));
  const before = await shownCode(page);
  await page.locator('.change').nth(1).click();
  await expect(page).toHaveURL((url) => url.pathname === `/${guide.id}/since/`);
  const { stored, ...address } = addressOf(page);
  expect(address).toEqual({
    guide: guide.id,
    journey: shortest.get('since' as never),
    details: { fuel: 'gas' },
    error: 'F9',
  });
  expect(stored).toMatch(/^[a-z0-9]{8}$/);
  await page.locator('main a[data-answer="running"]').click();
  await page.locator('main a[data-answer="wont-stop"]').click();
  await page.locator('[data-note]').click();
  await expect(page.locator('.groups').first()).toBeVisible();
  expect(await shownCode(page)).not.toBe(before);
  await expect(page.getByLabel('What the display showed')).toHaveValue('F9');
  await expect(page.getByLabel('Model number')).toHaveValue('AB-1');
});

test('the day is set once, where the reader is, and stays', async ({ page }) => {
  // 2026-11-26 01:30 UTC is still the 25th in Chicago, the tests' time zone.
  await page.clock.setFixedTime(new Date('2026-11-26T01:30:00Z'));
  const { journey } = to('near');
  await open(page, { journey, details: {} });
  await expect.poll(() => addressOf(page).made).toBe('2026-11-25');
  await page.clock.setFixedTime(new Date('2026-11-28T18:00:00Z'));
  await page.reload();
  await expect.poll(() => shownCode(page)).toBe(codeFor({ journey, details: {} }));
  expect(addressOf(page).made).toBe('2026-11-25');
});

test('details change the code; everything survives a reload', async ({ page }) => {
  const fragment = to('stop-book');
  await open(page, fragment);
  const plain = await shownCode(page);
  const chip = (asked: string, answer: string) =>
    page.getByRole('group', { name: asked }).getByRole('button', { name: answer, exact: true });
  // What tells most of this journey is asked at once, the rest on request.
  await expect(page.locator('.details [role=group]')).toHaveCount(3);
  await page.getByRole('button', { name: 'More questions' }).click();
  await chip('Is it gas or electric?', 'Gas').click();
  await chip('How old is it?', 'More than 15 years').click();
  await page.getByLabel('What the display showed').fill('F9 E1');
  await page.getByLabel('Model number').fill('XY 123/4');
  await page.getByLabel('Anything else?').fill('Ring twice & wait. 100% #1');
  const details = { fuel: 'gas', age: 'over-15' };
  const code = codeFor({ ...fragment, details, error: 'F9 E1' });
  expect(code).not.toBe(plain);
  expect(await shownCode(page)).toBe(code);
  await expect(page.locator('.code-card [role=status]')).toHaveText('Your code has changed.');
  await page.reload();
  await expect.poll(() => shownCode(page)).toBe(code);
  await expect(chip('How old is it?', 'More than 15 years')).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await expect(page.getByLabel('Model number')).toHaveValue('XY 123/4');
  const long = { code, model: 'XY 123/4', remark: 'Ring twice & wait. 100% #1' };
  expect((await qrOf(page)).fragment).toEqual({ journey: [], details: {}, ...long });
  await chip('How old is it?', 'More than 15 years').click();
  await chip('Is it gas or electric?', 'Gas').click();
  await page.getByLabel('What the display showed').fill('');
  expect(await shownCode(page)).toBe(plain);
});

test('by keyboard alone: copy, and show large', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const fragment = to('stop-book');
  await open(page, fragment);
  await expect(page.locator('.groups').first()).toBeVisible();
  const stops = await tabOrder(page);
  expect(stops.filter(({ ring }) => !ring)).toEqual([]);
  const reach = async (name: string) => {
    await page.locator('body').evaluate(() => (document.activeElement as HTMLElement).blur());
    for (const { length } = stops, tries = { left: length }; tries.left > 0; tries.left -= 1) {
      await page.keyboard.press('Tab');
      if ((await page.locator(':focus').textContent())?.trim() === name) return;
    }
    throw new Error(`Tab never came to ${name}`);
  };
  await reach('Copy code');
  await page.keyboard.press('Enter');
  await expect(page.locator('.code-card [role=status]')).toHaveText('Code copied.');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(codeFor(fragment));
  await reach('Show large');
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog');
  await expect(dialog).toBeVisible();
  await expect(dialog.locator('strong').first()).toHaveText(codeFor(fragment).slice(0, 4));
  await axe(page);
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await expect(page.getByRole('button', { name: 'Show large' })).toBeFocused();
});

test('where copying is not allowed, the text stands ready to be copied', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(navigator, 'clipboard', { value: undefined });
  });
  const fragment = to('stop-book');
  await open(page, fragment);
  await page.getByRole('button', { name: 'Copy code' }).click();
  await expect(page.getByLabel('Copy this text')).toBeFocused();
  expect(await page.evaluate(() => getSelection()?.toString())).toBe(codeFor(fragment));
  await axe(page);
});

test('sharing and reading aloud pass on the link and the spelling words', async ({ page }) => {
  await page.addInitScript(() => {
    const log: unknown[] = [];
    Object.assign(window, { log });
    navigator.share = (data) => Promise.resolve(void log.push(data?.text));
    speechSynthesis.speak = ({ text }) => void log.push(text);
  });
  const fragment = to('stop-gas', { model: 'AB-1' });
  await open(page, fragment);
  await page.getByRole('button', { name: 'Share' }).click();
  await page.getByRole('button', { name: 'Read aloud' }).click();
  const [text = '', spoken] = await page.evaluate(
    () => (window as unknown as { log: string[] }).log,
  );
  // A landlord reads what happened and what to do; the code and the link come last.
  const lines = text.split('\n');
  expect(lines[0]).toBe('The oven door stays locked. Stop. You smell gas. Leave now');
  expect(lines).toContain('- Get everyone out, pets too.');
  expect(lines.at(-2)).toBe(`Note code: ${codeFor(fragment)}`);
  const url = new URL(lines.at(-1) ?? '');
  expect(parseFragment(url.hash).fragment).toMatchObject({
    code: codeFor(fragment),
    model: 'AB-1',
  });
  expect(spoken?.split(/[.,] /)).toHaveLength(16);
  await page.getByRole('button', { name: 'Stop reading' }).click();
  await expect(page.getByRole('button', { name: 'Read aloud' })).toBeVisible();
});

test('photos go along with what is shared, smaller, and nothing is sent or kept', async ({
  page,
}) => {
  await page.addInitScript(() => {
    navigator.canShare = () => true;
    navigator.share = async (data) => {
      const { text, files = [] } = data ?? {};
      const sizes = await Promise.all(
        files.map(async (file) => {
          const { width, height } = await createImageBitmap(file);
          return [file.name, file.type, width, height];
        }),
      );
      Object.assign(window, { shared: { text, sizes } });
    };
  });
  await open(page, to('stop-book'));
  await page.getByRole('button', { name: 'Add photos' }).click();
  const share = page.getByRole('button', { name: 'Share with photos' });
  await expect(share).toBeDisabled();
  await axe(page);
  const photo = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [3200, 1600];
    return canvas.toDataURL('image/png').slice('data:image/png;base64,'.length);
  });
  for (const name of ['Photo of the display', 'Photo of the model plate']) {
    const buffer = Buffer.from(photo, 'base64');
    await page.getByLabel(name).setInputFiles({ name: 'x.png', mimeType: 'image/png', buffer });
  }
  await expect(page.getByText('Model plate added')).toBeVisible();
  await share.click();
  const shared = () =>
    page.evaluate(
      () => (window as unknown as { shared?: { text: string; sizes: unknown[] } }).shared,
    );
  await expect
    .poll(async () => (await shared())?.sizes)
    .toEqual([
      ['display.jpg', 'image/jpeg', 1600, 800],
      ['plate.jpg', 'image/jpeg', 1600, 800],
    ]);
  expect((await shared())?.text).toContain('Note code: ');
  await page.reload();
  await expect(page.getByRole('button', { name: 'Add photos' })).toBeVisible();
  await expect(page.getByText('Model plate added')).toHaveCount(0);
});

test('where the browser cannot share files, no photos are offered', async ({ page }) => {
  await page.addInitScript(() => {
    navigator.share = () => Promise.resolve();
    navigator.canShare = (data) => !data?.files;
  });
  await open(page, to('stop-book'));
  await expect(page.getByRole('button', { name: 'Share' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Add photos' })).toHaveCount(0);
});

test('narrow windows and large text keep everything in view', async ({ page }) => {
  await open(page, to('stop-book', { error: 'W'.repeat(60), remark: 'w'.repeat(240) }));
  await expect(page.locator('.groups').first()).toBeVisible();
  await page.setViewportSize({ width: 320, height: 640 });
  await noSidewaysScroll(page);
  // 200 % is asked of a window as it is (1.4.4), 320 px of text as it is (1.4.10).
  await page.setViewportSize({ width: 360, height: 740 });
  await textSize(page, 200);
  await noSidewaysScroll(page);
});

test('on paper: the code, the QR code, the answers and what was added, no buttons', async ({
  page,
}) => {
  await open(page, to('stop-book', { model: 'AB-1', details: { fuel: 'gas' } }));
  await expect(page.locator('.groups').first()).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  for (const part of ['.code-card > .groups', '.qr svg', '.given', '.details', '.more'])
    await expect(page.locator(part)).toBeVisible();
  await expect(page.getByLabel('Model number')).toHaveValue('AB-1');
  await expect(page.getByLabel('Anything else?')).toBeHidden();
  await expect(page.getByRole('button', { name: 'Gas', exact: true })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Electric', exact: true })).toBeHidden();
  expect(
    await page.locator('main button:not([aria-pressed=true]):visible, main input:visible').count(),
  ).toBe(0);
});

test.describe('in the dark', () => {
  test.use({ colorScheme: 'dark' });
  test('the page keeps its contrast, and the QR code can be read', async ({ page }) => {
    const fragment = to('stop-gas');
    await open(page, fragment);
    await axe(page);
    expect((await qrOf(page)).fragment.code).toBe(codeFor(fragment));
  });
});

test.describe('with scripts off', () => {
  test.use({ javaScriptEnabled: false });
  test('the page says whom to call', async ({ page }) => {
    await open(page, to('stop-book'));
    await expect(page.locator('noscript p').first()).toContainText('555-01');
    await expect(page.locator('noscript a[href^="tel:"]')).toBeVisible();
  });
});
