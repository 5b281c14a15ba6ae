// The sensor bench with what people type by mistake.
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';

test('each mistake has its own words, also one after another', async ({ page }) => {
  await page.goto('/bench/');
  const field = page.locator('#ohms');
  const trouble = page.locator('#ohms-trouble');
  const told = new Set<string>();
  const mistakes = ['abc', '-5', '1000000000', '1,080'];
  for (const typed of mistakes) {
    await field.fill(typed);
    await expect(trouble, typed).not.toBeEmpty();
    await expect(field).toHaveAttribute('aria-invalid', 'true');
    await expect(field).toHaveValue(typed);
    told.add((await trouble.textContent()) ?? '');
  }
  expect(told.size).toBe(mistakes.length);
  await axe(page);
  await field.fill('1080');
  await expect(trouble).toBeEmpty();
});
