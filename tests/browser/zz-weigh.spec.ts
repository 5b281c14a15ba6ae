import { siteDir, siteUrl, test } from './support/fixtures.ts';
import { kindsOf } from './support/kinds.ts';
import { weigh } from './support/weight.ts';
test('weigh', async ({ browser }) => {
  const { paths } = kindsOf(siteDir()).find((one) => one.kind === 'note') ?? { paths: [] };
  for (const path of paths) {
    const { total, script, loads } = await weigh(browser, new URL(path, siteUrl()).href);
    console.log(path, total, script, loads.map(l=>l.bytes+' '+l.url.split('/').pop()).join(' | '));
  }
});
test('shots', async ({ page }) => {
  const j = 'danger.none~since.over-4~near.quiet~display.lock~control-lock.no-change~off-once.same~controls.buttons~try-door.stuck~panel.ready~breaker-off.done~breaker-on.stayed~listen.hum-on';
  for (const [name, w, h, dark] of [['p',360,740,false],['d',1280,800,false],['pd',360,740,true]] as const) {
    await page.emulateMedia({ colorScheme: dark ? 'dark' : 'light' });
    await page.setViewportSize({ width: w, height: h });
    await page.goto('/note/#j=' + j); await page.reload();
    await page.locator('.groups').first().waitFor({timeout: 8000});
    await page.locator('.details button').first().click();
    await page.screenshot({ path: `/tmp/evidence/note-${name}.png` , fullPage: name !== 'pd'});
  }
  await page.emulateMedia({ media: 'print', colorScheme: 'light' });
  await page.setViewportSize({ width: 800, height: 1000 });
  await page.screenshot({ path: `/tmp/evidence/note-print.png`, fullPage: true });
});
