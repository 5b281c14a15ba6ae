import { afterEach, expect, test, vi } from 'vitest';
import { lastThere, waysBack } from '../../../src/app/question/ways-back.ts';

const site = 'https://range.example/help/';
const at = (page: string, ...answers: string[]) =>
  `${site}${page}/#g=burner${answers.length > 0 ? `&j=${answers.join('~')}` : ''}`;
// It began in one guide and went over to another; a timer and an early tap are one page's own.
const gone = `${site}no-heat/gone/#a=x.y&g=burner&j=danger.none~what.cold~no-heat/fuel.gas&e=F9&w=gone.60.0`;

test('leads back over the questions to the first one, the answers shortened', () => {
  expect(waysBack(gone)).toEqual([
    gone,
    `${at('no-heat/fuel', 'danger.none', 'what.cold')}&e=F9`,
    `${at('burner/what', 'danger.none')}&e=F9`,
    `${site}burner/danger/#g=burner&e=F9`,
  ]);
  expect(waysBack(`${site}burner/gone/#j=danger.none`).at(-1)).toBe(at('burner/danger'));
});

function answering(fate: (url: string) => number | undefined) {
  vi.stubGlobal('fetch', (url: string) => {
    const status = fate(url.replace(/#.*/, '').slice(site.length));
    return status === undefined
      ? Promise.reject(new TypeError('no network'))
      : Promise.resolve({ ok: status === 200 });
  });
}
afterEach(() => {
  vi.unstubAllGlobals();
});

test('the last page that is there', async () => {
  answering(() => 200);
  expect(await lastThere(gone)).toBe(gone);
  answering((page) => (page === 'burner/what/' ? 200 : 404));
  expect(await lastThere(gone)).toBe(waysBack(gone)[2]);
  // A copy on the device, with no network, has the earlier pages.
  answering((page) => (page.startsWith('burner/') ? 200 : undefined));
  expect(await lastThere(gone)).toBe(waysBack(gone)[2]);
});

test('none where the guide is gone; the journey’s own where nothing can be asked', async () => {
  answering(() => 404);
  expect(await lastThere(gone)).toBeUndefined();
  answering(() => undefined);
  expect(await lastThere(gone)).toBe(gone);
});
