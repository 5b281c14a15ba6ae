// The technician's page: every way a code can come in, and everything it can turn out to be.
import type { Locator, Page } from '@playwright/test';
import { encode } from 'uqr';
import { readFileSync } from 'node:fs';
import { loadModel } from '../../src/diagnosis/load.ts';
import { protect } from '../../src/note/blocks.ts';
import { makeLibrary } from '../../src/note/library.ts';
import { readCode } from '../../src/note/read.ts';
import type { Release } from '../../src/note/release.ts';
import { spell } from '../../src/note/spelling.ts';
import { groupedText } from '../../src/note/symbols.ts';
import type { Note, NoteCode } from '../../src/note/types.ts';
import { writeCode } from '../../src/note/write.ts';
import { axe } from './support/axe.ts';
import { expect, siteUrl, test } from './support/fixtures.ts';
import { tabOrder } from './support/keyboard.ts';
import { noSidewaysScroll, targetsAtLeast, textSize } from './support/layout.ts';

const json = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));
const library = makeLibrary([json('content/releases/1.json') as Release]);

const pairs = (text: string) =>
  text.split(' ').map((pair) => {
    const [at, answer] = pair.split('.');
    return { at, answer };
  });
const written = (journey: string, more: Partial<Note> = {}): NoteCode => {
  const note = {
    release: 1,
    guide: 'door-locked',
    journey: pairs(journey),
    day: 3,
    details: {},
    error: '',
    ...more,
  } as unknown as Note;
  const code = writeCode(note, library);
  if (!code.ok) throw new Error(JSON.stringify(code.error));
  return code.value;
};

const CODE = written(
  'danger.none doing.ended display.lock since.over-4 fan.quiet near.cool inside.nothing forced.yes',
);
const plain = CODE.replaceAll('-', '');
const other = (at: number, step = 1): string => {
  const symbols = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
  return symbols.charAt((symbols.indexOf(plain.charAt(at)) + step) % 32);
};
/** The code with other text in place of some characters. */
const put = (at: number, text: string, length = text.length): string =>
  plain.slice(0, at) + text + plain.slice(at + length);

const field = (page: Page): Locator => page.getByLabel('Note code');
const status = (page: Page): Locator => page.getByRole('status');
const note = (page: Page): Locator => page.getByRole('article', { name: 'What the code says' });
const open = async (page: Page, hash = ''): Promise<void> => {
  await page.goto(`preview/${hash}`);
  await expect(field(page)).toBeVisible();
};
const enter = async (page: Page, text: string): Promise<void> => {
  await field(page).fill(text);
  await page.getByRole('button', { name: 'Read the code' }).click();
};

/** A QR code as a picture: an uncompressed 24-bit Windows bitmap, rows from the bottom. */
function picture(text: string, scale = 6): Buffer {
  const { data, size } = encode(text, { border: 4 });
  const side = size * scale;
  const row = Math.ceil((side * 3) / 4) * 4;
  const file = Buffer.alloc(54 + row * side, 255);
  file.write('BM');
  file.fill(0, 2, 54);
  file.writeUInt32LE(file.length, 2);
  file.writeUInt32LE(54, 10);
  file.writeUInt32LE(40, 14);
  file.writeInt32LE(side, 18);
  file.writeInt32LE(side, 22);
  file.writeUInt16LE(1, 26);
  file.writeUInt16LE(24, 28);
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++)
      if (data[Math.floor(y / scale)]?.[Math.floor(x / scale)])
        file.fill(0, 54 + (side - 1 - y) * row + 3 * x, 54 + (side - 1 - y) * row + 3 * x + 3);
  return file;
}
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
    await expect(note(page).getByRole('heading', { level: 2 }).first()).toContainText(
      'Not finished The guide was left at: Controls',
    );
    await expect(note(page)).toContainText('The door was forced');
    await expect(note(page).getByText('Not asked:')).toBeVisible();
    expect(new URL(page.url()).hash.toUpperCase()).toBe(`#C=${CODE}`);
    await page.reload();
    await expect(note(page)).toBeVisible();
    await axe(page);
    await noSidewaysScroll(page);
    await targetsAtLeast(page, '#preview button, #preview a, #preview summary, #preview textarea');
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
    const first = note(page).getByRole('heading', { level: 2 }).first();
    await expect(first).toContainText('Stopped');
    await expect(note(page)).toContainText('told to call 911 first');
    await expect(note(page)).toContainText('Danger reported: A smell of gas');
    await axe(page);
  });

  test('with nothing answered ranks by the assumed shares', async ({ page }) => {
    await open(page, `#c=${written('danger.none')}`);
    await expect(note(page)).toContainText('shares assumed before any answer');
    const file = 'content/guides/door-locked/faults.yaml';
    const model = loadModel(readFileSync(file, 'utf8'), file);
    if (!model.ok) throw new Error('faults.yaml is broken');
    const most = Math.max(...model.value.faults.map(({ prior }) => prior));
    await expect(note(page).locator('.share').first()).toContainText(
      `${String(Math.round(100 * most))}%`,
    );
  });

  test('keeps the error text as text, turned by nothing', async ({ page }) => {
    await open(page, `#c=${written('danger.none doing.ended display.error', { error: 'E 7' })}`);
    await expect(note(page).locator('.display')).toHaveText('E 7');
  });
});

test.describe('a damaged code is a proposal', () => {
  const swapAt = [...plain].findIndex((sign, at) => at > 4 && sign !== plain.charAt(at + 1));
  const dropAt = [...plain].findIndex(
    (sign, at) => at > 4 && sign !== plain.charAt(at + 1) && sign !== plain.charAt(at - 1),
  );
  for (const [what, input, words] of [
    ['a wrong character', put(5, other(5)), `character 2: ${plain.charAt(5)} in place of`],
    [
      'two wrong characters',
      put(5, other(5)).slice(0, 9) + other(9) + plain.slice(10),
      `Group 3, character 2: ${plain.charAt(9)} in place of ${other(9)}`,
    ],
    [
      'a swap',
      put(swapAt, plain.charAt(swapAt + 1) + plain.charAt(swapAt)),
      'two neighbors had changed places',
    ],
    ['a dropped character', put(dropAt, '', 1), `${plain.charAt(dropAt)} was missing`],
    ['an added character', put(5, other(5) + plain.charAt(5), 1), 'taken out'],
    ['an unreadable character', put(5, '?'), `${plain.charAt(5)} filled in for ?`],
  ] as const)
    test(what, async ({ page }) => {
      await open(page);
      await enter(page, input);
      await expect(status(page)).toContainText('Ask the caller before you use it.');
      await expect(page.locator('.repair')).toContainText(words);
      await expect(page.locator('.repair .code')).toHaveText(CODE.replaceAll('-', ''));
      await expect(note(page)).toBeHidden();
      await axe(page);
      await noSidewaysScroll(page);
      await page.getByRole('button', { name: 'Yes, that is what the caller reads' }).click();
      await expect(status(page)).toContainText('Confirmed by the caller.');
      await expect(field(page)).toHaveValue(CODE);
      await expect(note(page)).toBeVisible();
      expect(new URL(page.url()).hash).toBe(`#c=${CODE}`);
    });

  test('six unreadable ones leave nothing to check with, and it says so', async ({ page }) => {
    await open(page, `#c=${encodeURIComponent(put(3, '??????'))}`);
    await expect(page.locator('.repair')).toContainText('Compare every character.');
  });

  test('not confirmed shows no note and keeps the text', async ({ page }) => {
    await open(page);
    await enter(page, put(5, other(5)));
    await page.getByRole('button', { name: 'No', exact: true }).click();
    await expect(status(page)).toContainText('Not confirmed.');
    await expect(field(page)).toHaveValue(put(5, other(5)));
    await expect(field(page)).toBeFocused();
    await expect(note(page)).toBeHidden();
    await axe(page);
  });
});

test.describe('a refused code says why and what to do', () => {
  const beyond = new Uint8Array(10).fill(15, 9);
  for (const [problem, input, words] of [
    ['empty', '- -', /no code in the field/],
    ['too-long', 'A'.repeat(90), /longer than any note code/],
    ['too-short', 'ABCD', /has 4 characters.* at least 16/],
    ['wrong-length', 'ABCD-EFGH-JKMN-PQRS-TV', /has 18 characters.* 16 or 20/],
    ['bad-symbol', 'ABCD-EFGH-JKMN-PQRU', /sign U after 15 characters/],
    ['bad-word', 'Alfa Bravo Charley Delta', /word charley after 2/],
    ['too-many-unreadable', put(0, '???????'), /7 characters are marked \?/],
    ['too-damaged', put(0, [0, 1, 2, 3].map((at) => other(at)).join('')), /Too many characters/],
    ['unknown-release', groupedText(protect(beyond, 16)), /release 16 of the guides/],
    ['impossible', groupedText(protect(new Uint8Array(14), 20)), /not the length it should have/],
  ] as const)
    test(problem, async ({ page }) => {
      const reading = readCode(input, library);
      expect(reading.kind === 'refused' && reading.problem.code).toBe(problem);
      await open(page);
      await enter(page, input);
      await expect(status(page)).toContainText(words);
      await expect(field(page)).toHaveAttribute('aria-invalid', 'true');
      await expect(field(page)).toHaveAccessibleDescription(words);
      await expect(field(page)).toHaveAccessibleDescription(/What to do/);
      await expect(field(page)).toHaveValue(input);
      await expect(note(page)).toBeHidden();
      await axe(page);
      await noSidewaysScroll(page);
    });

  test('every kind of problem has its words', () => {
    const problems = Object.values(
      (json('content/text/en/errors.json') as { read: Record<string, { next: string }> }).read,
    );
    const schema = readFileSync('public/schema/reading.json', 'utf8');
    const codes = new Set(
      Object.keys((json('content/text/en/errors.json') as { read: object }).read),
    );
    expect(problems.length).toBe(11);
    for (const code of codes) expect(schema).toContain(`"${code}"`);
    for (const { next } of problems) expect(next).not.toBe('');
  });
});

test('the three demo codes read exactly, show flags, and lead to the note', async ({ page }) => {
  await open(page);
  const demos = page.locator('.demos a');
  await expect(demos).toHaveCount(3);
  for (const [index, flag] of [
    /hummed without end/,
    /Foil or a liner inside/,
    /breaker tripped/,
  ].entries()) {
    await demos.nth(index).click();
    await expect(status(page)).toContainText(/^Code read\. \d+ answers\.$/);
    await expect(page.locator('.flags')).toContainText(flag);
    await expect(note(page).locator('.faults > li').first()).toContainText('%');
    await expect(page.locator('.outcome')).toBeInViewport();
    await axe(page);
    await noSidewaysScroll(page);
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
    expect(new URL(page.url()).hash).toBe(`#c=${CODE}&m=QX-77`);
  });

  test('of a bare code', async ({ page }) => {
    await open(page);
    await choose(page, picture(CODE));
    await expect(status(page)).toHaveText('Code read. 8 answers.');
  });

  for (const [what, buffer, type, words] of [
    ['of another QR code', picture('https://elsewhere.example/'), 'image/bmp', /something else/],
    ['of nothing', picture(CODE).fill(255, 54), 'image/bmp', /No QR code was found/],
    ['that is none', Buffer.from('<script>'), 'image/png', /not a picture/],
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
  await expect(page.getByRole('alert')).toContainText('The camera may not be used here.');
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
  await expect(page.locator('.long dd').first()).not.toContainText('\u202e');
  await noSidewaysScroll(page);
  await axe(page);
  await page.goto('about:blank');
  await open(page, `#c=${encodeURIComponent(bad)}`);
  await expect(status(page)).toContainText('The sign < after 0 characters');
  await expect(field(page)).toHaveValue(bad);
  await page.goto('about:blank');
  await open(page, `#c=${'A'.repeat(10_000)}`);
  await expect(page.locator('.address-problem').first()).toContainText('more than a note can');
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
  expect(stops.map(({ name }) => name)).toContain('Print this note');
});

test('without scripts it says to call the office', async ({ browser }) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(`${siteUrl()}preview/`);
  const told = page.locator('noscript .card');
  await expect(told).toBeVisible();
  expect(await told.innerText()).toContain('Call the office.');
  await expect(page.getByRole('link', { name: '(207) 555-0142' })).toBeVisible();
  await context.close();
});
