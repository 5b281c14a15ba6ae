/**
 * Copies of firms elsewhere, built from two `firm.yaml`: no page of theirs says a number, a unit or
 * a source of the US, axe finds nothing, and the frame that one allows is the only one.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serve } from '../../src/cli/serve.ts';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { watch } from './support/watch.ts';

const number = (show: string, dial = show) => `{ show: '${show}', dial: '${dial}' }`;
const firmFile = (name: string, more: string) => `name: ${name}
area: the county
after-hours: Leave a message.
languages: [en]
${more}`;
const OPEN = 'open: { mon: 08:00-17:30, tue: 08:00-12:00, sun: closed }';
const COSTS = 'second-visit: 90, hourly-rate: 60, carrying: 0.15 }';

// Numbers for drama: Ofcom for the UK, 555-01xx for Canada; 999, 111 and 105 are the public ones.
const copies = {
  GB: {
    firm: firmFile(
      'Cooker Care',
      `region: GB
phone: ${number('0113 496 0142', '+441134960142')}
site: https://cooker.example
frame: [https://www.cooker.example]
colors: { light: '#1f4f7a', dark: '#a9cff2' }
hours: { zone: Europe/London, ${OPEN} }
costs: { currency: GBP, ${COSTS}
numbers: { emergency: ${number('999')}, poison: ${number('111')}, gas-company: ${number('0113 496 0163', '01134960163')}, power-company: ${number('105')} }
`,
    ),
    lang: 'en-GB',
    says: ['Monday, 8 am to 5:30 pm', 'consumer unit', '180 °C'],
    foreign:
      /\b911\b|\d ?°F|\binch(?:es)?\b|\d (?:feet|foot)\b|1-800|\b(?:CPSC|NFPA|PHMSA|HRSA|EPA|CDC|ANSI|GFCI)\b|\bUL \d|\bthe US\b|Poison Help|breaker panel|made up for/,
  },
  CA: {
    firm: firmFile(
      'Range Repair North',
      `region: CA
phone: ${number('(506) 555-0142', '+15065550142')}
site: https://range.example
hours: { zone: America/Moncton, ${OPEN} }
costs: { currency: CAD, ${COSTS}
numbers: { emergency: ${number('911')}, poison: ${number('1-844-555-0111', '+18445550111')}, gas-company: ${number('(506) 555-0163', '5065550163')}, power-company: ${number('(506) 555-0177', '5065550177')} }
`,
    ),
    lang: 'en-CA',
    says: ['Monday, 8 a.m. to 5:30 p.m.', 'breaker panel', '10 cm', 'Health Canada'],
    foreign:
      /\binch(?:es)?\b|\d (?:feet|foot)\b|1-800|\b(?:CPSC|NFPA|PHMSA|HRSA|EPA|CDC)\b|\bUL \d|\bthe US\b|Poison Help|made up for/,
  },
} as const;

test.describe.configure({ mode: 'serial' });

for (const [region, { firm, lang, says, foreign }] of Object.entries(copies))
  test(`a copy for ${region} says nothing of the US, and axe finds nothing`, async ({
    browser,
  }) => {
    test.setTimeout(900_000);
    const top = mkdtempSync(join(tmpdir(), 'hobnote-region-'));
    // Inside the project: what Astro writes for itself looks for its packages from there.
    const site = `dist.${region}`;
    try {
      cpSync('content', join(top, 'content'), { recursive: true });
      writeFileSync(join(top, 'content/firm.yaml'), firm);
      const built = spawnSync(process.execPath, ['src/cli/build.ts', site], {
        ...{ encoding: 'utf8', env: { ...process.env, CONTENT_DIR: join(top, 'content') } },
      });
      expect(built.status, built.stdout + built.stderr).toBe(0);
      const files = readdirSync(site, { recursive: true, encoding: 'utf8' });
      // Not the bundles kept offline: the same texts again, between numbers and hashes. Nor the safety
      // case: it is of the guides as they were written, for the US, and says so.
      const pages = files.filter(
        (name) =>
          (name.endsWith('.html') && !name.startsWith('safety/')) ||
          /_astro\/(?!kept).*\.json$/.test(name),
      );
      expect(pages.length).toBeGreaterThan(500);
      const texts = pages.map((name) => {
        const text = readFileSync(join(site, name), 'utf8');
        return { name, text: text.replaceAll(/<(?:path|svg)[^>]*>/g, '') };
      });
      expect(
        texts.flatMap(({ name, text }) => {
          const [found] = foreign.exec(text) ?? [];
          return found === undefined ? [] : [`${name}: ${found}`];
        }),
      ).toEqual([]);
      // CLDR has narrow spaces before "am".
      const all = texts.map(({ text }) => text.replaceAll(/[\u202f\u00a0]/g, ' ')).join('\n');
      for (const one of says) expect(all).toContain(one);
      expect(all).toContain(`<html lang="${lang}"`);

      const served = await serve({ dir: site, port: 0 });
      const context = await browser.newContext({ serviceWorkers: 'block' });
      try {
        const watched = await watch(context, served.url);
        const page = await context.newPage();
        for (const path of [
          '',
          'door-locked/danger/',
          'door-locked/wait/',
          'care/alarms/',
          'about/',
          'staff/',
        ]) {
          await page.goto(served.url + path);
          await axe(page);
        }
        expect(watched.verdict()).toEqual([]);
        // Only sites that the firm names may frame it: by default none.
        const framing = await browser.newContext({ serviceWorkers: 'block' });
        const outer = await framing.newPage();
        // Under an address of its own: a page of the web may not frame one of this machine.
        await framing.route('https://copy.example/**', async (route) => {
          const path = new URL(route.request().url()).pathname.slice(1);
          await route.fulfill({ response: await route.fetch({ url: served.url + path }) });
        });
        const shown = async (origin: string) => {
          const body = '<iframe src="https://copy.example/door-locked/danger/"></iframe>';
          await framing.route(`${origin}/**`, (route) =>
            route.fulfill({ contentType: 'text/html', body }),
          );
          await outer.goto(`${origin}/help/`);
          await outer.waitForLoadState('networkidle');
          const [, inner] = outer.frames();
          return (await inner?.locator('h1').count()) === 1;
        };
        expect(await shown('https://www.cooker.example')).toBe(region === 'GB');
        expect(await shown('https://elsewhere.example')).toBe(false);
        await framing.close();
      } finally {
        await context.close();
        await served.close();
      }
    } finally {
      for (const folder of [top, site]) rmSync(folder, { recursive: true, force: true });
    }
  });
