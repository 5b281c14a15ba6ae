/**
 * Screens of each kind of page in another engine, held beside Chromium's: where the main parts
 * stand, and the pictures themselves, seen from so far away that letters are grey.
 */
import { chromium, type Browser } from '@playwright/test';
import { mkdir, writeFile } from 'node:fs/promises';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CHROMIUM_FLAGS, chromium as program } from '../../../.config/browsers.ts';
import { formatFragment } from '../../../src/address/fragment.ts';

import { codeFor, to } from '../../browser/support/codes.ts';
import { heard, until, answered, type Engine, type Size, type Tab } from './engine.ts';

const PHONE: Size = { width: 360, height: 740 };
const DESK: Size = { width: 1280, height: 800 };

const at = (node: string) => `door-locked/${node}/#${formatFragment(to(node))}`;
/** A page of each kind, and what tells that it is drawn. */
const PAGES: readonly (readonly [kind: string, path: string, drawn: string])[] = [
  ['first page', '', '.button.start'],
  ['danger', 'door-locked/danger/', '.answers a'],
  ['question', at('display'), '.answers a'],
  ['step with a wait', at('wait'), '.timer .start'],
  ['stop', at('stop-book'), '.to-note a'],
  ['emergency', 'door-locked/stop-fire/#j=danger.fire', '.calls a'],
  ['finish', at('finish-open'), '.to-note a'],
  ['care', 'care/foil/', '.care'],
  ['note', `note/#${formatFragment(to('stop-book'))}`, '.qr svg'],
  ['preview', `preview/#c=${codeFor(to('stop-book'))}`, '.faults .range'],
  ['desk', 'desk/#g=door-locked&j=danger.none', '.choices button'],
  ['route', 'round/', '#codes'],
  ['bench', 'bench/', '#ohms'],
];
/** Kinds that a desk shows: staff's, and two that have columns of their own there; a phone all others. */
const ON_DESK = ['question', 'note', 'preview', 'desk', 'route', 'bench'];
const ON_BOTH = ['question', 'note'];
/** Whose places are compared, where a page has them. */
const PARTS =
  'header.bar, .firm, .danger-list > summary, main h1, .head .drawing, .stages li, .care, .lines, .timer, .answers li, .calls a, .to-note a, .card, .groups li, .qr svg, .outcome, .fault, .check, .choices li, .panel, textarea, .button';
/**
 * CSS pixels that a part may stand elsewhere or be larger, left, top, wide and high: engines round
 * letters differently, and WebKit takes off up to a pixel a line of text, a dozen down a screen.
 */
const APART = [6, 12, 6, 6];
/** Where pictures that differ are kept. */
const DIR = 'test-results/engines';
/** The side of a square that counts as one, px. */
const CELL = 10;
/** Brightness of 255 by which a square may differ, and the share of squares that may. */
const [SHADE, SPECKS] = [48, 0.025];

interface Box {
  readonly part: string;
  readonly box: readonly number[];
}

/** The same letters in every engine, nothing blinking, and the places of the parts. */
const LOOK = `(() => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync("* { font-family: 'DejaVu Sans', sans-serif !important; caret-color: transparent !important; scrollbar-width: none } ::-webkit-scrollbar { display: none }");
  document.adoptedStyleSheets = [sheet];
  // A focus may have scrolled.
  scrollTo(0, 0);
  requestAnimationFrame(() => requestAnimationFrame(() => (window.painted = true)));
  return [...document.querySelectorAll(${JSON.stringify(PARTS)})].flatMap((one) => {
    const { left, top, width, height } = one.getBoundingClientRect();
    const name = one.localName + '.' + (one.getAttribute('class') ?? '') + ' ' + one.textContent.trim().slice(0, 24);
    return width > 1 && height > 0 ? [{ part: name, box: [left, top, width, height].map(Math.round) }] : [];
  });
})()`;

type Screen = Pick<Tab, 'goto' | 'run' | 'picture'>;
interface Seen {
  readonly boxes: readonly Box[];
  readonly picture: Uint8Array;
  readonly shades: Uint8Array;
}

async function look(screen: Screen, url: string, drawn: string, size: Size): Promise<Seen> {
  await screen.goto('about:blank');
  await screen.goto(url);
  const there = `document.querySelector(${JSON.stringify(drawn)})?.getClientRects().length > 0`;
  await until(async () => ((await screen.run<boolean>(there)) ? true : undefined), drawn);
  const boxes = await screen.run<Box[]>(LOOK);
  await until(
    async () => ((await screen.run<boolean>('window.painted')) ? true : undefined),
    'paint',
  );
  const picture = await screen.picture();
  const shades = await sharp(picture)
    .resize(Math.round(size.width / CELL), Math.round(size.height / CELL), { fit: 'fill' })
    .removeAlpha()
    .raw()
    .toBuffer();
  return { boxes, picture, shades };
}

/** What stands elsewhere on the first screen, in words; what there is on all of the page. */
function moved(here: readonly Box[], there: readonly Box[], height: number): string[] {
  const names = (boxes: readonly Box[]) => boxes.map(({ part }) => part).join(' | ');
  if (names(here) !== names(there)) return [`other parts: ${names(here)} <> ${names(there)}`];
  return here.flatMap(({ part, box }, nth) => {
    const other = there[nth]?.box ?? [];
    return (other[1] ?? 0) > height ||
      box.every((value, side) => Math.abs(value - (other[side] ?? NaN)) <= (APART[side] ?? 0))
      ? []
      : [`${part}: ${box.join(' ')}, in Chromium ${other.join(' ')}`];
  });
}

/** The share of squares that look like none near their place; lines drift as boxes do. */
function specks(here: Uint8Array, there: Uint8Array, columns: number): number {
  const differs = (at: number, other: number) =>
    [0, 1, 2].some(
      (color) => !(Math.abs((here[at + color] ?? 0) - (there[other + color] ?? NaN)) <= SHADE),
    );
  const alone = Array.from({ length: here.length / 3 }, (_, square) => 3 * square).filter((at) =>
    [-1, 0, 1].every((row) => differs(at, at + 3 * row * columns)),
  );
  return (3 * alone.length) / here.length;
}

/** Both pictures, for people to look at. */
async function keep(what: string, here: Seen, there: Seen): Promise<void> {
  await mkdir(DIR, { recursive: true });
  await writeFile(`${DIR}/${what}.png`, here.picture);
  await writeFile(`${DIR}/${what}, Chromium.png`, there.picture);
}

/** Holds an engine's screens beside Chromium's, each kind of page where it is read; with `EVERY=1` on both. */
export function picturesIn(name: string, start: () => Promise<Engine>): void {
  describe(`${name} beside Chromium`, () => {
    const url = (path: string) => new URL(path, process.env['SITE_URL']).href;
    let engine: Engine;
    let browser: Browser;
    beforeAll(async () => {
      engine = await start();
      browser = await chromium.launch({ executablePath: program(), args: CHROMIUM_FLAGS });
    });
    afterAll(() => Promise.all([engine.close(), browser.close()]));

    for (const [device, asked] of Object.entries({ phone: PHONE, desk: DESK }))
      it(`what is read on a ${device} looks the same`, async () => {
        const tab = heard(await answered(engine.open(asked), 'open'));
        // WebKit's small browser has no window as narrow as a phone.
        const inner = '[innerWidth, innerHeight]';
        const [width, height] = await tab.run<[number, number]>(inner);
        const size = { width, height };
        const page = await browser.newPage({ viewport: size, serviceWorkers: 'block' });
        const known: Screen = {
          goto: async (to) => {
            await page.goto(to);
          },
          run: (expression) => page.evaluate(expression),
          picture: () => page.screenshot(),
        };
        const differences: string[] = [];
        for (const [kind, path, drawn] of PAGES) {
          const shown = ON_BOTH.includes(kind) || ON_DESK.includes(kind) === (asked === DESK);
          if (!shown && process.env['EVERY'] !== '1') continue;
          const [there, here] = await Promise.all(
            [known, tab].map((screen) => look(screen, url(path), drawn, size)),
          );
          if (!there || !here) throw new Error(kind);
          // At the least the header's.
          if (there.boxes.length < 3) differences.push(`${kind}: no parts`);
          const found = moved(here.boxes, there.boxes, size.height);
          const share = specks(here.shades, there.shades, Math.round(size.width / CELL));
          if (share > SPECKS)
            found.push(`${(100 * share).toFixed(1)} % of its squares look different`);
          differences.push(...found.map((one) => `${kind}: ${one}`));
          if (found.length > 0) await keep(`${kind}, ${device}, ${name}`, here, there);
        }
        await tab.close();
        await page.close();
        expect(differences).toEqual([]);
      });
  });
}
