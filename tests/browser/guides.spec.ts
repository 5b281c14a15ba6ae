import { guides as published } from '../../src/content/load.ts';
import { ownNodes, split } from '../../src/guide/ids.ts';
import { formatJourney } from '../../src/address/journey-text.ts';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { noSidewaysScroll } from './support/layout.ts';
import { walkGuide } from './support/site.ts';
import { shortestWays } from './support/ways.ts';

/** The locked door's pages are walked one and all in guide.spec.ts. */
const guides = published().filter(({ id }) => (id as string) !== 'door-locked');
/** Endings walked in each guide, spread over all that are its own. */
const SAMPLE = 4;

test('there are other guides', () => {
  expect(guides.length).toBeGreaterThan(0);
});

for (const guide of guides) {
  const ways = shortestWays(guide);
  const ends = ownNodes(guide).filter(({ kind }) => kind === 'stop' || kind === 'finish');
  const step = Math.ceil(ends.length / SAMPLE);
  const sample = ends.filter((_, place) => place % step === 0).map(({ id }) => id);
  // One more that another guide holds, where this one hands over.
  const over = [...ways.keys()].find(
    (id) => split(id).guide !== undefined && guide.nodes.get(id)?.answers.length === 0,
  );

  test(`${guide.id}: a sample of endings is reached by taps, the journey riding along`, async ({
    page,
    isMobile,
  }) => {
    test.skip(!isMobile, 'the way is the same on every screen');
    test.setTimeout(120_000);
    expect(sample.length).toBeGreaterThan(2);
    for (const end of over === undefined ? sample : [...sample, over]) {
      const journey = ways.get(end) ?? [];
      await walkGuide(
        page,
        journey.map(({ at, answer }) => [at, answer]),
        guide.id,
      );
      const { guide: of = guide.id, name } = split(end);
      await expect(page).toHaveURL((url) => url.pathname === `/${of}/${name}/`);
      await expect(page.locator('.lost')).toBeHidden();
      const hash = new URLSearchParams(new URL(page.url()).hash.slice(1));
      // Where the address names no guide, the journey began in the page's own.
      expect([hash.get('j'), hash.get('g') ?? of]).toEqual([formatJourney(journey), guide.id]);
      await noSidewaysScroll(page);
      await axe(page);
    }
  });
}
