// The staff's pages where the network is cut: the script itself, or the data it fetches, does not come.
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { staffLanguages } from '../../src/content/load.ts';
import { rootOf } from './support/pages.ts';
import { CODE } from './support/preview.ts';

const MAIN = {
  en: ['has not arrived', 'reload the page'],
  es: ['no ha llegado', 'cargue la página otra vez'],
  fr: ['n’est pas arrivée', 'rechargez la page'],
} as const;

for (const kind of ['preview', 'desk', 'round', 'bench'] as const)
  for (const [language, [what, next]] of Object.entries(MAIN))
    test(`${language}: the ${kind} says that its script has not come, and what to do`, async ({
      page,
      watched,
    }) => {
      test.skip(
        !staffLanguages().includes(language),
        `this copy does not speak ${language} to staff`,
      );
      watched.expect(/request failed .*\.js/);
      watched.expect(/console error .*ERR_FAILED/);
      const scripts = '**/_astro/*.js';
      const place = page.locator(`#${kind}`);
      const late = place.locator('.late');
      await page.route(scripts, (route) => route.abort());
      await page.goto(`${rootOf(language)}${kind}/`);
      // The seconds it is held back, so that nothing flashes, are passed over.
      const held = await late.evaluate((words) =>
        words.getAnimations().map((one) => {
          one.finish();
          return one.effect?.getTiming().delay;
        }),
      );
      expect(held).toEqual([4000]);
      await expect(late).toBeVisible();
      await expect(late).toContainText(what);
      await expect(late).toContainText(next);
      await axe(page);
      if (kind === 'preview') await expect(late.locator('a[href^="tel:"]')).toBeVisible();
      if (kind === 'desk') await expect(late.getByRole('link')).toBeVisible();
      // Loaded again with a network, the page stands in its place.
      await page.unroute(scripts);
      await page.reload();
      await expect(place.locator('input, button').first()).toBeVisible();
      await expect(late).toHaveCount(0);
    });

for (const kind of ['preview', 'desk'] as const)
  test(`the ${kind} says that a guide’s data has not come, and tries again`, async ({
    page,
    watched,
  }) => {
    watched.expect(/request failed .*\.(?:preview|desk)\./);
    watched.expect(/console error .*ERR_FAILED/);
    const parts = `**/_astro/*/*.${kind}.*.json`;
    await page.route(parts, (route) => route.abort());
    await page.goto(kind === 'desk' ? `desk/#c=${CODE}` : `preview/#c=${CODE}`);
    const told = page.getByRole('alert').filter({ hasText: 'could not be loaded' });
    await expect(told).toContainText('Nothing you entered is lost.');
    await axe(page);
    await page.unroute(parts);
    await told.getByRole('button', { name: 'Try again' }).click();
    await expect(told).toBeHidden();
    await expect(page.locator(kind === 'desk' ? '.desk' : '#result').first()).toBeVisible();
  });
