// One page of every kind, in the state a reader meets it in.
import { expect, type Page } from '@playwright/test';
import { formatFragment } from '../../../src/address/fragment.ts';
import { mainLanguage, staffLanguages, languages } from '../../../src/content/load.ts';
import { publishedCodebooks, sampleCodes } from '../../unit/route/support/codes.ts';
import { codeFor, guide, to, toWait } from './codes.ts';
import { answerKeys } from '../../../src/app/desk/keys.ts';
import { HUM, keyOf, seen } from './desk.ts';
import { rootOf } from './pages.ts';

/** A kind of page, and how a reader comes to it. */
export interface Place {
  readonly kind: string;
  /** Opens it in a language, and waits until it stands. */
  readonly open: (page: Page, language: string) => Promise<void>;
  /** In the languages of the staff's pages, in the homeowner's, or in the first language only. */
  readonly speaks: 'all' | 'staff' | 'main';
}

/** Opens an address below the language's root, and waits until something is there. */
const at =
  (path: string, shown: string, act: (page: Page) => Promise<unknown> = () => Promise.resolve()) =>
  async (page: Page, language: string): Promise<void> => {
    // Another fragment alone would not load the page anew.
    await page.goto('about:blank');
    await page.goto(rootOf(language) + path);
    await expect(page.locator(shown).first()).toBeVisible();
    await act(page);
  };

/** The page of a node of the locked door's guide, its journey in the address. */
const node = (id: string) => `door-locked/${id}/#${formatFragment(to(id))}`;

/** The first node with this signal word, of a kind where one is asked for. */
function cautioned(caution: string, kind?: string): string {
  const found = [...guide.nodes.values()].find(
    (one) => one.caution === caution && (kind === undefined || one.kind === kind),
  );
  if (!found) throw new Error(`no ${kind ?? 'page'} with ${caution}`);
  return found.id;
}

/** Opens the first page with this signal word. */
export const openCautioned = (page: Page, language: string, care: string): Promise<void> =>
  at(node(cautioned(care)), `.care.${care}`)(page, language);

const waiting = formatFragment({
  journey: toWait.map(([where, answer]) => ({ at: where, answer })) as never,
  details: {},
});
const [first = '', second = '', third = ''] = sampleCodes(publishedCodebooks(), 3);

/** A page of every kind. */
export const places: readonly Place[] = [
  { kind: 'first page', speaks: 'all', open: at('', '.button.start') },
  { kind: 'question', speaks: 'all', open: at(node('since'), '.answers a') },
  { kind: 'caution', speaks: 'all', open: at(node(cautioned('caution', 'step')), '.care.caution') },
  {
    kind: 'wait',
    speaks: 'all',
    open: at(`door-locked/wait/#${waiting}`, '.timer .start', async (page) => {
      await page.locator('.timer .start').click();
      await expect(page.locator('[data-left="earliest"]')).toBeVisible();
    }),
  },
  { kind: 'stop', speaks: 'all', open: at('door-locked/stop-fire/#j=danger.fire', '.calls a') },
  { kind: 'ending', speaks: 'all', open: at(node('finish-foil'), '.to-note .button') },
  { kind: 'care', speaks: 'all', open: at('care/foil/', '.care') },
  { kind: 'note', speaks: 'all', open: at(`note/#${formatFragment(to('stop-book'))}`, '.qr svg') },
  {
    kind: 'preview',
    speaks: 'staff',
    // The ranges come last: names of rows have them.
    open: at(`preview/#c=${codeFor(to('stop-book'))}`, '.faults .range'),
  },
  {
    kind: 'desk',
    speaks: 'staff',
    // A call taken up again asks for danger first.
    open: at(
      `desk/#${formatFragment({ journey: HUM.slice(0, 2), details: {} })}`,
      '.desk',
      async (page) => {
        await seen(page);
        await page
          .locator('.choices button')
          .nth(answerKeys.indexOf(keyOf('danger', 'none')))
          .click();
        await expect(page.locator('.middle .care')).toBeVisible();
      },
    ),
  },
  {
    kind: 'round',
    speaks: 'staff',
    open: at('round/', '#codes', async (page) => {
      await page.locator('#codes').fill([first, second, third].join('\n'));
      await page.locator('.enter button[type=submit]').click();
      await expect(page.locator('.visit')).toHaveCount(3);
    }),
  },
  { kind: 'bench', speaks: 'staff', open: at('bench/', '#ohms') },
  { kind: 'map', speaks: 'staff', open: at('map/door-locked/', '.map svg') },
  { kind: 'about', speaks: 'all', open: at('about/', 'main h1') },
  { kind: 'lost', speaks: 'main', open: at('404.html', 'main .button:visible') },
];

/** The first language, and one more where there is one: from right to left where the homeowner's pages speak it. */
export const twoLanguages = (speaks: Place['speaks']): readonly string[] => {
  const spoken = speaks === 'staff' ? staffLanguages() : languages();
  const more = speaks === 'main' ? [] : spoken.slice(1).slice(-1);
  return [mainLanguage(), ...more];
};
