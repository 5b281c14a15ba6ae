// The desk's wait across a reload: the device's clock may have been set meanwhile.
import { formatFragment } from '../../src/address/fragment.ts';
import { axe } from './support/axe.ts';
import { guide, shortest } from './support/codes.ts';
import { expect, test } from './support/fixtures.ts';

test('no clock set while the page was away ends a wait, and the desk says so', async ({ page }) => {
  const [node, journey] =
    [...shortest].find(([id]) => guide.nodes.get(id)?.timer?.kind === 'cooling') ?? [];
  expect(journey?.length).toBeGreaterThan(2);
  if (!node || !journey) return;
  const now = Math.floor(Date.now() / 1000);
  const soonest = page.locator('.step-timer .faces strong').last();
  const none = page.locator('.choices').getByRole('button', { name: 'None of these' });
  for (const moved of [3 * 3600, -3 * 3600]) {
    // As the address was when the clock was moved: twenty minutes were left.
    const counted = now - moved;
    const timer = { node, end: counted + 1200, counted };
    await page.goto(`/desk/#${formatFragment({ journey, details: {}, timer })}`);
    await expect(page.locator('.told')).toContainText('That time is not counted.');
    // Danger is asked about first, every time.
    await none.click();
    await expect(soonest).toHaveText(/^(20:0\d|19:[45]\d)$/);
    await axe(page);
    // A reload at once has nothing to tell of it.
    await page.reload();
    await expect(page.locator('.told')).toContainText('The answers are kept.');
    await expect(page.locator('.told')).not.toContainText('not counted');
    await none.click();
    await expect(soonest).toHaveText(/^(20:0\d|19:[3-5]\d)$/);
    await page.goto('about:blank');
  }
});
