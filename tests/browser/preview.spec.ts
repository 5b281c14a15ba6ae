// The technician's page: every way a code can come in, and what a sound one shows.
import type { Page } from '@playwright/test';
import { demoCodes, models } from '../../src/content/load.ts';
import { shares } from '../../src/diagnosis/posterior.ts';
import { sampleJourneys } from '../../src/note/sample.ts';
import { spell } from '../../src/note/spelling.ts';
import { axe } from './support/axe.ts';
import { DESK, expect, siteUrl, test } from './support/fixtures.ts';
import { tabOrder } from './support/keyboard.ts';
import { noSidewaysScroll, targetsAtLeast, textSize } from './support/layout.ts';
import { picture } from './support/picture.ts';
import {
  CODE,
  codebooks,
  enter,
  field,
  json,
  note,
  open,
  other,
  put,
  status,
  written,
} from './support/preview.ts';

const choose = (page: Page, buffer: Buffer, name = 'code.bmp', mimeType = 'image/bmp') =>
  page.getByLabel('From a picture').setInputFiles({ name, mimeType, buffer });

test.describe('a sound code', () => {
  test('typed, shows the note and follows in the address', async ({ page }) => {
    await open(page);
    await axe(page);
    await field(page).pressSequentially(CODE.slice(0, 10).toLowerCase());
    await expect(status(page)).toHaveText('8 characters so far.');
    await field(page).pressSequentially(CODE.slice(10).toLowerCase());
    await expect(status(page)).toHaveText('Code read. 8 answers.');
    await expect(note(page).locator('.urgency')).toContainText('Not finished');
    await expect(note(page).getByRole('heading', { level: 2 }).first()).toHaveText(
      'The guide stopped at: How a self-clean is started',
    );
    await expect(note(page)).toContainText('Door forced');
    await note(page).locator('.answers summary').click();
    await expect(note(page).getByText('Not asked:')).toBeVisible();
    expect(new URL(page.url()).hash.toUpperCase()).toBe(`#C=${CODE}`);
    await page.reload();
    await expect(note(page)).toBeVisible();
    await axe(page);
    await noSidewaysScroll(page);
    await targetsAtLeast(page, '#preview :is(button, a, summary):visible');
    await textSize(page, 200);
    await noSidewaysScroll(page);
  });

  test('spelled out', async ({ page }) => {
    await open(page);
    await enter(page, spell(CODE).flat().join(' '));
    await expect(status(page)).toHaveText('Code read. 8 answers.');
  });

  test('with the parts of the long form, which stay with their own code', async ({ page }) => {
    await open(page, `#c=${CODE}&m=QX-77&r=Side%20gate&e=%C2%A7%207`);
    for (const text of ['QX-77', 'Side gate', '§ 7']) await expect(note(page)).toContainText(text);
    await enter(page, written('danger.none doing.never'));
    await expect(status(page)).toHaveText('Code read. 2 answers.');
    for (const text of ['QX-77', 'Side gate', '§ 7'])
      await expect(note(page)).not.toContainText(text);
    expect(page.url()).not.toContain('QX-77');
  });

  test('of an emergency says so first', async ({ page }) => {
    await open(page, `#c=${written('danger.none doing.ended display.gas')}`);
    await expect(note(page).locator('.urgency')).toHaveText(
      'Emergency: told to call 911 first · Stopped',
    );
    await expect(note(page)).toContainText('Danger reported: A smell of gas');
    await expect(note(page)).toContainText('until the gas company');
    // Nothing to load and nothing to count until others have been there.
    await expect(note(page).locator('.load')).toHaveCount(0);
    await note(page).getByText('After that: likely faults and checks').click();
    await expect(note(page).locator('.check .quiet').first()).not.toContainText('minute');
    await axe(page);
  });

  test('with nothing answered ranks by the assumed shares', async ({ page }) => {
    await open(page, `#c=${written('danger.none')}`);
    await expect(note(page)).toContainText('starting assumptions');
    const model = models()['door-locked'];
    if (!model) throw new Error('no model');
    const most = Math.max(...shares(model, [{ key: 'complaint', answer: 'door-locked' }]));
    await expect(note(page).locator('.odds').first()).toHaveText(
      `${String(Math.round(10 * most))} in 10`,
    );
  });

  test('keeps the error text as text, turned by nothing', async ({ page }) => {
    await open(page, `#c=${written('danger.none doing.ended display.error', { error: 'E 7' })}`);
    await expect(note(page).locator('.display')).toHaveText('E 7');
  });
});

test('the demo codes read exactly, show their flags and no others, and lead to the note', async ({
  page,
}) => {
  const { flags } = json('content/text/en/preview.json') as { flags: Record<string, string> };
  for (const [demo, raised] of [
    ['hum', ['breaker-off', 'hum']],
    ['foil', ['error-seen', 'door-forced', 'foil']],
    ['storm', ['tripped', 'breaker-off']],
  ] as const) {
    await open(page);
    const nth = (json('content/demo.json') as { id: string }[]).findIndex(({ id }) => id === demo);
    await page.locator('.demos a').nth(nth).click();
    await expect(status(page)).toContainText(/^Code read\. \d+ answers\.$/);
    await expect
      .soft(page.locator('.flags li'), demo)
      .toHaveText(raised.map((id) => flags[id] ?? ''));
    await expect(note(page).locator('.faults > li').first()).toContainText('in 10');
    await expect(note(page).locator('.outcome')).toBeInViewport();
    await axe(page);
    await noSidewaysScroll(page);
    await page.goto('about:blank');
  }
});

const [HUM, FOIL] = (json('content/demo.json') as { id: string }[]).map(({ id }) => id);
const demo = (id = '') => demoCodes().find((one) => one.id === id)?.code ?? '';
/** A code with one character misread: repaired, and confirmed. */
const misread = (code: string) => code.slice(0, 5) + (code[5] === 'A' ? 'B' : 'A') + code.slice(6);
const GAS = written('danger.none doing.ended display.gas');

/** What stands on the first screen once a code is read, each by what it must say. */
const first = ['.plate', '.outcome', '.flags', '.facts'];
const work = ['.parts', '.ask', '.fault >> nth=0', '.fault >> nth=1', '.check > summary >> nth=0'];
const CASES = [
  ['ordinary', `${demo(HUM)}&m=QX-77&r=Side%20gate`, [...first, ...work]],
  ['an emergency', GAS, [...first, '.held']],
  ['no model number', demo(FOIL), [...first, ...work, '.call']],
  ['damaged and repaired', misread(demo(HUM)), [...first, ...work, '.call']],
] as const;

for (const [size, use] of [
  ['a phone', {}],
  ['a desk', DESK],
] as const)
  test.describe(`the first screen on ${size}`, () => {
    test.use(use);
    for (const [what, hash, parts] of CASES)
      test(`${what}: all that decides is in sight at once, and one sheet of paper`, async ({
        page,
      }) => {
        await open(page, `#c=${hash}`);
        if (what.startsWith('damaged')) await page.getByRole('button', { name: 'Yes' }).click();
        await expect(note(page)).toBeVisible();
        const height = page.viewportSize()?.height ?? 0;
        const seen: Record<string, number> = {};
        for (const part of parts) {
          const place = page.locator('#preview').locator(part).first();
          // Only where an answer would change the load.
          if (part === '.ask' && (await place.count()) === 0) continue;
          await expect(place, part).toBeVisible();
          const box = await place.boundingBox();
          seen[part] = Math.round((box?.y ?? NaN) + (box?.height ?? NaN));
        }
        test
          .info()
          .annotations.push({ type: 'lower edges, px', description: JSON.stringify(seen) });
        expect(await page.evaluate(() => scrollY)).toBe(0);
        expect(
          Object.entries(seen).filter(([, y]) => !(y <= height)),
          JSON.stringify(seen),
        ).toEqual([]);
        // On a desk also where it is and how the call went, on the lowest screen in use.
        if (height === 800 && what !== 'an emergency')
          for (const more of ['.where', '.answers .line']) {
            const box = await page.locator(more).boundingBox();
            expect((box?.y ?? NaN) + (box?.height ?? NaN), more).toBeLessThanOrEqual(720);
          }
        if (what !== 'an emergency')
          await expect(page.locator('.where figcaption')).toContainText(/1.*(latch|motor)/);
        // How far each share moves when the figures are off, once that is worked out.
        if (what !== 'an emergency')
          await expect(page.locator('.fault .range').first()).toBeAttached();
        await axe(page);
        await noSidewaysScroll(page);
        await page.waitForLoadState('networkidle');
        const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
        expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g), 'pages').toHaveLength(1);
      });
  });

test('the fullest note of each guide is one sheet of paper too', async ({ page }) => {
  const newest = Math.max(...codebooks.keys());
  const guides = codebooks.get(newest)?.guides ?? [];
  expect(guides.length).toBeGreaterThan(5);
  const details = { fuel: 'electric', kind: 'slide-in', controls: 'keys', age: '10-to-15' };
  for (const guide of guides) {
    const [longest] = [...sampleJourneys(guide, 200, 3)].toSorted((a, b) => b.length - a.length);
    const more = { release: newest, guide: guide.id, journey: longest ?? [], details };
    await open(page, `#c=${written('danger.none', { ...more, error: 'F2E1 AND SO ON' })}`);
    await expect(note(page)).toBeVisible();
    await page.waitForLoadState('networkidle');
    const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g), guide.id).toHaveLength(1);
    await page.goto('about:blank');
  }
});

test('a code that comes by the address alone is read again', async ({ page }) => {
  await open(page);
  await page.evaluate((code) => (location.hash = `c=${code}`), CODE);
  await expect(status(page)).toHaveText('Code read. 8 answers.');
});

test.describe('a picture', () => {
  test('of a QR code fills the field, long form and all', async ({ page }) => {
    await open(page);
    await choose(page, picture(`https://hobnote.example/preview/#c=${CODE}&m=QX-77`));
    await expect(status(page)).toHaveText('Code read. 8 answers.');
    await expect(note(page)).toContainText('QX-77');
    expect(page.url()).toContain(siteUrl());
    // The model number lies in the tab, and the address holds its key alone.
    expect(new URL(page.url()).hash).toMatch(new RegExp(`^#c=${CODE}&k=[a-z0-9]{8}$`));
  });

  test('of a bare code', async ({ page }) => {
    await open(page);
    await choose(page, picture(CODE));
    await expect(status(page)).toHaveText('Code read. 8 answers.');
  });

  for (const [what, buffer, type, words] of [
    ['of another QR code', picture('https://elsewhere.example/'), 'image/bmp', /not a note code/],
    ['of nothing', picture(CODE).fill(255, 54), 'image/bmp', /No QR code found/],
    ['that is none', Buffer.from('<script>'), 'image/png', /cannot open this picture/],
  ] as const)
    test(`${what} says what to do`, async ({ page }) => {
      await open(page);
      await enter(page, 'ABCD');
      await choose(page, buffer, 'x', type);
      await expect(page.getByRole('alert')).toHaveText(words);
      await expect(field(page)).toHaveValue('ABCD');
      await axe(page);
    });
});

test('a camera that is refused leaves the other ways', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(navigator, 'mediaDevices', {
      value: { getUserMedia: () => Promise.reject(new DOMException('no', 'NotAllowedError')) },
    });
  });
  await open(page);
  await page.getByRole('button', { name: 'Scan' }).click();
  await expect(page.getByRole('alert')).toContainText('The camera is blocked.');
  await axe(page);
});

test('a code held before the camera is read, and the camera is off again', async ({ page }) => {
  await open(page);
  await page.evaluate(
    async (bytes) => {
      const image = await createImageBitmap(new Blob([new Uint8Array(bytes)]));
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [image.width, image.height];
      const stream = canvas.captureStream(10);
      const draw = () => canvas.getContext('2d')?.drawImage(image, 0, 0);
      draw();
      setInterval(draw, 100);
      Object.defineProperty(navigator, 'mediaDevices', {
        value: { getUserMedia: () => Promise.resolve(stream) },
      });
      Object.assign(globalThis, { madeStream: stream });
    },
    [...picture(CODE)],
  );
  await page.getByRole('button', { name: 'Scan' }).click();
  await expect(status(page)).toHaveText('Code read. 8 answers.');
  await expect(page.locator('video')).toHaveCount(0);
  const states = await page.evaluate(() =>
    (globalThis as unknown as { madeStream: MediaStream }).madeStream
      .getTracks()
      .map(({ readyState }) => readyState),
  );
  expect(states).toEqual(['ended']);
});

test('hostile fragments are only ever text', async ({ page }) => {
  const bad = '<img src=x onerror=alert(1)><script>alert(2)</script>';
  const turned = `\u202e${bad}\u0007`;
  const hash = new URLSearchParams({ c: CODE, m: turned, r: bad.repeat(20), e: bad });
  await open(page, `#${hash.toString().replaceAll('+', '%20')}`);
  await expect(note(page)).toContainText(bad);
  await expect(page.locator('main img, main script[src="x"]')).toHaveCount(0);
  await expect(page.locator('.address-problem').first()).toContainText('Hidden characters');
  await expect(note(page).locator('.facts bdi').first()).not.toContainText('\u202e');
  await noSidewaysScroll(page);
  await axe(page);
  await page.goto('about:blank');
  await open(page, `#c=${encodeURIComponent(bad)}`);
  await expect(status(page)).toContainText('The character < after 0 characters');
  await expect(field(page)).toHaveValue(bad);
  await page.goto('about:blank');
  await open(page, `#c=${'A'.repeat(20_000)}`);
  await expect(page.locator('.address-problem').first()).toContainText('link was too long');
});

test('keyboard alone: enter a damaged code, confirm it, read the note', async ({ page }) => {
  await open(page);
  await field(page).focus();
  await page.keyboard.type(put(5, other(5)));
  await page.keyboard.press('Enter');
  const yes = page.getByRole('button', { name: 'Yes, that is what the caller reads' });
  for (let presses = 0; presses < 12; presses++) {
    if (await yes.evaluate((button) => button === document.activeElement)) break;
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Enter');
  await expect(note(page)).toBeVisible();
  await expect(page.locator('#result')).toBeFocused();
  const stops = await tabOrder(page);
  expect(stops.filter(({ ring }) => !ring)).toEqual([]);
  expect(stops.map(({ name }) => name)).toContain('Print');
});

test('without scripts it says to call the office', async ({ browser }) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(`${siteUrl()}preview/`);
  const told = page.locator('noscript .card');
  await expect(told).toBeVisible();
  expect(await told.innerText()).toContain('The office can read the code');
  await expect(page.getByRole('link', { name: '(207) 555-0142', exact: true })).toBeVisible();
  await context.close();
});
