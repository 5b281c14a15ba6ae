import { axe } from './support/axe.ts';
import { expect, siteDir, test } from './support/fixtures.ts';
import { noSidewaysScroll, textSize } from './support/layout.ts';
import { pagesOf } from './support/site.ts';

const pages = pagesOf(siteDir()).filter((path) => path.startsWith('/care/'));
const topics = pages.filter((path) => path !== '/care/');

test('the first page leads to every care page, each accessible, its sources at its foot', async ({
  page,
}) => {
  expect(topics).toHaveLength(7);
  await page.goto('/');
  await page.getByRole('link', { name: 'Take care of your range' }).click();
  const led = await page
    .locator('main a')
    .evaluateAll((links) => links.map((link) => (link as HTMLAnchorElement).pathname));
  expect(led.toSorted()).toEqual(topics);
  for (const path of pages) {
    await page.goto(path);
    await axe(page);
  }
  for (const path of topics) {
    await page.goto(path);
    for (const mark of await page.locator('sup a').all())
      await expect(page.locator((await mark.getAttribute('href')) ?? '')).toBeVisible();
  }
});

test('a care page fits 320 pixels at double text size, and one printed sheet', async ({
  page,
  isMobile,
}) => {
  test.skip(!isMobile, 'the width is set here, and paper is the same');
  await page.setViewportSize({ width: 320, height: 640 });
  expect(topics.length).toBeGreaterThan(0);
  for (const path of topics) {
    await page.goto(path);
    await textSize(page, 200);
    await noSidewaysScroll(page);
    await page.reload();
    await page.emulateMedia({ media: 'print' });
    await expect(page.locator('.danger-list')).toBeHidden();
    await expect(page.locator('.sources')).toBeVisible();
    const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b/g), path).toHaveLength(1);
    await page.emulateMedia({ media: null });
  }
});

test('a guide’s page leads to the care page on its matter', async ({ page }) => {
  await page.goto('/door-locked/foil-care-cold/#j=danger.none');
  await page.locator('.why summary').click();
  await page.getByRole('link', { name: 'Foil and liners' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Foil and liners');
});
