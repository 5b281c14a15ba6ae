import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { FORGOTTEN, keptJourneys, store, STORED } from '../../../src/app/shared/stored-journey.ts';

const held = new Map<string, string>();
const inTab = new Map<string, string>();
beforeEach(() => {
  held.clear();
  vi.stubGlobal('sessionStorage', {
    setItem: (key: string, text: string) => inTab.set(key, text),
  });
  vi.useFakeTimers({ now: 36 * 60_000 });
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => held.get(key) ?? null,
    removeItem: (key: string) => held.delete(key),
    setItem: (key: string, text: string) => held.set(key, text),
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const page = (node: string, ...answers: string[]): string =>
  `/burner/${node}/#g=burner&j=${answers.join('~')}`;
const [one, two, three] = [
  page('b', 'danger.none'),
  page('c', 'danger.none', 'b.yes'),
  page('d', 'danger.none', 'b.yes', 'c.no'),
];

/** A line as it is kept: when, in minutes to the base of 36, stands between. */
const line = (address: string, title = '') => `${address} 10 ${title}`.trim();

test('a journey that goes on, and one that goes back, is one', () => {
  for (const address of [one, two, three, two]) store(address);
  expect(keptJourneys()).toEqual([line(two)]);
  store(page('e', 'danger.none', 'b.yesterday'), 'Another way');
  expect(keptJourneys()).toEqual([
    line(page('e', 'danger.none', 'b.yesterday'), 'Another way'),
    line(two),
  ]);
});

test('another start leaves the others beside it, three in all, titles with them', () => {
  store(three, 'Three lines');
  store(one);
  expect(keptJourneys()).toEqual([line(one), line(three, 'Three lines')]);
  // Back to where the earlier one was: it is the newest, and only once there.
  store(two);
  store(three);
  expect(keptJourneys()).toEqual([line(three)]);
  for (const guide of ['a', 'b', 'c']) store(`/fr/${guide}/start/#j=danger.none`);
  expect(keptJourneys()).toEqual([
    line('/fr/c/start/#j=danger.none'),
    line('/fr/b/start/#j=danger.none'),
    line('/fr/a/start/#j=danger.none'),
  ]);
  expect(held.get(STORED)).toBe(line('/fr/c/start/#j=danger.none'));
});

test('what was taken off is not written again by Back, until an answer is tapped', () => {
  store(three, 'Three lines');
  held.clear();
  held.set(FORGOTTEN, '');
  // Back shows page after page; a wait goes on telling; a title may have spaces.
  for (const address of [three, two, one, two, `${three}&w=wait.1.1`]) store(address, 'A title');
  expect([keptJourneys(), held.size]).toEqual([[], 1]);
  store(two);
  store(two, 'A title');
  expect([keptJourneys(), held.has(FORGOTTEN)]).toEqual([[line(two, 'A title')], false]);
});

test('the tab knows its own journey, whatever other tabs keep', () => {
  store(two);
  held.set(STORED, page('x', 'danger.none', 'b.other'));
  expect(inTab.get(STORED)).toBe(two);
});
