import { expect, siteDir, test } from './support/fixtures.ts';
import { pagesOf } from './support/site.ts';

const topics = pagesOf(siteDir()).filter((path) => /^\/care\/./.test(path));

test('the first page leads to the care pages', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('link', { name: 'Take care of your range' }).click();
  await expect(page).toHaveURL(/\/care\/$/);
});

test('a care page fits one printed sheet, its sources on it', async ({ page }) => {
  expect(topics.length).toBeGreaterThan(0);
  await page.emulateMedia({ media: 'print' });
  for (const path of topics) {
    await page.goto(path);
    await expect(page.locator('.danger-list')).toBeHidden();
    await expect(page.locator('.sources')).toBeVisible();
    const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b/g), path).toHaveLength(1);
  }
});

test('a guide’s page leads to the care page on its matter', async ({ page }) => {
  await page.goto('/door-locked/foil-care-cold/#j=danger.none');
  await page.locator('.why summary').click();
  await page.getByRole('link', { name: 'Foil and liners' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Foil and liners');
});
