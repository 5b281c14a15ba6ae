// Web Application Manifest (W3C): what browsers ask of a site that can be put on the home screen.
import { expect, siteDir, siteUrl, test } from './support/fixtures.ts';
import { pagesOf } from './support/site.ts';

test.skip(({ isMobile }) => !isMobile, 'a manifest is the same on every screen');

interface Manifest {
  readonly [member: string]: unknown;
  readonly start_url: string;
  readonly icons: readonly { src: string; sizes: string; type: string; purpose: string }[];
}

test('every language can be installed, and starts at its own first page', async ({ page }) => {
  const starts = pagesOf(siteDir()).filter((path) => /^\/(?:[a-z]{2}\/)?$/.test(path));
  expect(starts).toContain('/');
  for (const path of starts) {
    await page.goto(path);
    const language = (await page.locator('html').getAttribute('lang')) ?? '';
    const link = await page.locator('link[rel="manifest"]').getAttribute('href');
    const address = new URL(link ?? '', page.url());
    const answer = await page.request.get(address.href);
    expect(answer.headers()['content-type']).toContain('application/manifest+json');
    const manifest = (await answer.json()) as Manifest;
    expect(manifest['lang']).toBe(language);
    for (const member of ['name', 'short_name', 'description'])
      expect(manifest[member], member).toMatch(/\S/);
    expect(manifest['display']).toBe('standalone');
    expect(new URL(manifest.start_url, address).href).toBe(new URL(path, siteUrl()).href);
    const shapes = manifest.icons.map(({ sizes, purpose }) => `${sizes} ${purpose}`);
    expect(shapes).toEqual(
      expect.arrayContaining(['192x192 any', '512x512 any', '512x512 maskable']),
    );
    for (const { src, sizes } of manifest.icons) {
      const icon = await page.request.get(new URL(src, address).href);
      const png = await icon.body();
      // PNG (W3C), section 11.2.1: width and height are the first words of the IHDR chunk.
      expect(`${String(png.readUInt32BE(16))}x${String(png.readUInt32BE(20))}`).toBe(sizes);
    }
  }
});
