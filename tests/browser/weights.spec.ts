import type { GuideId } from '../../src/guide/types.ts';
import { expect, siteDir, siteUrl, test } from './support/fixtures.ts';
import { newest } from './support/codebooks.ts';
import { kindsOf } from './support/kinds.ts';
import { written } from './support/preview.ts';
import { CEILINGS, weigh, type Load } from './support/weight.ts';

const listed = (loads: readonly Load[]) =>
  loads.map(({ url, type, bytes }) => `${String(bytes)} ${type} ${url}`).join('\n');

for (const kind of ['question', 'note', 'preview', 'round', 'desk'] as const)
  test(`no ${kind} page weighs more than its ceiling`, async ({ browser }) => {
    const { paths, ceiling } = kindsOf(siteDir()).find((one) => one.kind === kind) ?? {
      paths: [],
      ceiling: 0,
    };
    expect(paths.length).toBeGreaterThan(0);
    for (const path of paths) {
      const { total, script, loads } = await weigh(browser, new URL(path, siteUrl()).href);
      expect(loads.length, path).toBeGreaterThan(0);
      expect(total, `${path}, brotli bytes\n${listed(loads)}`).toBeLessThanOrEqual(ceiling);
      if (kind === 'question')
        expect(script, `${path}, bytes of JavaScript`).toBeLessThanOrEqual(
          CEILINGS[
            loads.some(({ url }) => /\/(?:Timer|Hours)\./.test(url))
              ? 'clockScript'
              : 'questionScript'
          ],
        );
    }
  });

for (const [guide, ceiling] of Object.entries(CEILINGS.read))
  test(`a code of ${guide} brings its guide's figures and words, and no other release`, async ({
    browser,
  }) => {
    const code = written('danger.none', { release: newest, guide: guide as GuideId });
    const { total, loads } = await weigh(browser, new URL(`/preview/#c=${code}`, siteUrl()).href);
    expect(total, listed(loads)).toBeLessThanOrEqual(ceiling);
    expect(loads.filter(({ url }) => url.includes('/books.'))).toEqual([]);
    expect(loads.filter(({ url }) => /\.(?:book|preview)\./.test(url))).toHaveLength(2);
  });

test('a call that is going weighs no more than its ceiling: no figures, no old releases', async ({
  browser,
}) => {
  const { total, loads } = await weigh(browser, new URL('/desk/#j=danger.none', siteUrl()).href);
  expect(total, listed(loads)).toBeLessThanOrEqual(CEILINGS.call);
  expect(loads.filter(({ url }) => /\.preview\.|\/books\./.test(url))).toEqual([]);
});
