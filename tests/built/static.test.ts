// Every built page of every language, read as its file.
import { globSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  content,
  firm,
  hazards,
  languageOf,
  languages,
  localeOf,
  staffLanguages,
  textFile,
} from '../../src/content/load.ts';
import { valueAt } from '../../src/content/problem.ts';
import { BLOCKS } from '../../src/content/texts.ts';
import { ownNodes, parseId } from '../../src/guide/ids.ts';
import { unpack } from '../../src/offline/worker/bundle.ts';
import { policy, withStyle } from '../../src/site/policy.ts';
import { AHEAD, bundlesOf } from '../browser/support/releases.ts';
import { pagesOf, readablePagesOf } from '../browser/support/site.ts';
import { guides } from '../browser/support/shortest-journeys.ts';
import { dist, elements, hashesIn, markup, target } from './site.ts';

const [main = '', ...others] = languages();
const rootOf = (language: string) => (language === main ? '/' : `/${language}/`);
const all = pagesOf(dist);
const known = new Set(all);

/** All sentences in a value of a text file; of a care page's line its words, not its source. */
const sentencesIn = (value: unknown): readonly string[] =>
  typeof value === 'string'
    ? [value]
    : Object.entries(value ?? {}).flatMap(([key, one]) => (key === 'from' ? [] : sentencesIn(one)));

/** On the preview alone, though its file has words for readers. */
const PREVIEW_SAYS = 'offline:update.newest';

/** A text without spaces and marks of quotation, as markup and data files write them. */
const bare = (text: string): string => text.replace(/&#39;|&quot;|&amp;|\\"|[\s"'&]/g, '');

/** What a page or a data file says: in attributes, and between marks such as those of a foreign word. */
const saidBy = (path: string): string => {
  const text = markup(path);
  return `${bare(text)}\n${bare(text.replace(/<[^>]*>/g, ''))}`;
};

describe('every page', () => {
  it('is closed to everything but the site’s own files, without exception', () => {
    expect(policy).not.toMatch(/unsafe|eval|strict-dynamic|https?:|\*/);
    const rules = new Map(
      policy.split('; ').map((rule) => [rule.split(' ')[0], rule.split(' ').slice(1).join(' ')]),
    );
    expect(rules.get('default-src')).toBe("'none'");
    for (const name of ['script-src', 'style-src', 'connect-src', 'worker-src', 'manifest-src'])
      expect(rules.get(name), name).toBe("'self'");
    expect(rules.get('require-trusted-types-for')).toBe("'script'");
    expect(hashesIn(markup(`/${guides[0]?.id ?? ''}/danger/`))).toHaveLength(1);
    for (const path of all) {
      // Where the firm has visits booked is the one link that leads elsewhere.
      const html = markup(path).replaceAll(`href="${firm().booking ?? ''}"`, '');
      const said = elements(html, 'meta').filter((meta) => meta.has('http-equiv'));
      expect(
        said.map((meta) => meta.get('content')),
        path,
      ).toEqual([withStyle(policy, hashesIn(html))]);
      // Nothing stands in the page itself that would need a weaker policy, or names another host.
      expect(html, path).not.toMatch(/<style[^>]|\son\w+=|\sstyle=|javascript:/);
      expect(html.match(/<script(?![^>]*(?:src=|application\/json))/g), path).toBeNull();
      expect(html.match(/\s(?:src|href|action)="(?:https?:)?\/\//g), path).toBeNull();
    }
  });

  it('says its language and direction, and leads to pages and places that are there', () => {
    let links = 0;
    for (const path of all.filter((page) => page !== '/404.html')) {
      const html = markup(path);
      const language = others.find((other) => path.startsWith(`/${other}/`)) ?? main;
      const [root] = elements(html, 'html');
      expect([root?.get('lang'), root?.get('dir')], path).toEqual([
        localeOf(language),
        languageOf(language).direction,
      ]);
      for (const link of elements(html, 'a')) {
        const href = link.get('href') ?? '';
        if (/^(?:tel|sms|mailto):/.test(href) || href === firm().booking) continue;
        links += 1;
        const { path: to, hash } = target(path, href);
        const file = /\.\w+$/.test(to);
        if (!file && !known.has(to)) expect.fail(`${path} leads to ${href}, which is not there`);
        if (to === path && /^#[\w-]+$/.test(hash))
          expect(html, `${path} ${hash}`).toContain(`id="${hash.slice(1)}"`);
      }
    }
    expect(links).toBeGreaterThan(all.length);
  });

  it('of one make loads the same files, so that the heaviest stands for all', () => {
    const makes = new Map<string, string>();
    for (const { id } of guides)
      for (const path of all.filter((page) => page.startsWith(`/${id}/`))) {
        const html = markup(path).replace(AHEAD, '');
        const [, kind = ''] = /class="page (question|step|stop|finish)/.exec(html) ?? [];
        expect(kind, path).not.toBe('');
        const signs = [
          'data-timer',
          'data-error-field',
          'id="walks"',
          'data-hours',
          '<style>',
        ].filter((sign) => html.includes(sign));
        const files = [
          ...elements(html, 'script').map((script) => script.get('src') ?? ''),
          ...elements(html, 'link').map((link) => link.get('href') ?? ''),
        ].join(' ');
        const make = [kind, ...signs].join();
        makes.set(make, makes.get(make) ?? files);
        expect(files, path).toBe(makes.get(make));
      }
    expect(makes.size).toBeGreaterThan(3);
  });
});

describe.each(languages())('the guides by plain links, scripts off: %s', (language) => {
  it('lead where the guide’s file says, from every page by every answer and every danger', () => {
    let edges = 0;
    for (const guide of guides)
      for (const node of ownNodes(guide)) {
        const path = `${rootOf(language)}${guide.id}/${node.id}/`;
        const links = elements(markup(path), 'a');
        const pathTo = (id: string) => {
          const { guide: of = guide.id, name } = parseId(id);
          return `${rootOf(language)}${of}/${name}/`;
        };
        const given = links
          .filter((link) => link.has('data-answer'))
          .map((link) => [link.get('data-answer'), target(path, link.get('href') ?? '')] as const);
        // The first answer begins the journey; later ones name the answer alone, with its guide
        // where it leads into another.
        const said = (id: string, to: string) =>
          node.id === guide.start
            ? `#j=${node.id}.${id}`
            : `#a=${parseId(to).guide === undefined ? '' : `${guide.id}/`}${node.id}.${id}`;
        expect(given, path).toEqual(
          node.answers.map(({ id, to }) => [id, { path: pathTo(to), hash: said(id, to) }]),
        );
        edges += given.length;
        const dangers = guide.nodes.get(guide.start)?.answers ?? [];
        const exits = links.filter((link) => link.has('data-exit'));
        expect(exits.length, path).toBeGreaterThan(5);
        for (const exit of exits) {
          const danger = dangers.find(({ id }) => id === exit.get('data-exit'));
          expect(target(path, exit.get('href') ?? '').path, path).toBe(pathTo(danger?.to ?? ''));
        }
      }
    expect(edges).toBeGreaterThan(500);
  });

  it('show the emergency number before all others on every emergency stop', () => {
    const stops = guides.flatMap((guide) =>
      ownNodes(guide)
        .filter(({ urgency }) => urgency === 'emergency')
        .map(({ id }) => `${rootOf(language)}${guide.id}/${id}/`),
    );
    expect(stops.length).toBeGreaterThan(6 * guides.length);
    for (const path of stops) {
      const [article = ''] = /<article.*<\/article>/s.exec(markup(path)) ?? [];
      const [first] = elements(article, 'a').filter((link) => link.get('href')?.startsWith('tel:'));
      expect(first?.get('href'), path).toBe('tel:911');
      expect(article, path).toMatch(/class="[^"]*\bcare\b/);
    }
  });

  it('show every sentence that a hazard relies on', () => {
    const keys = new Set(
      Object.values(hazards()).flatMap(({ controls }) => controls.sentences ?? []),
    );
    const nodes = guides.flatMap((guide) => ownNodes(guide).map((node) => ({ guide, node })));
    const ofOthers = others.filter((other) => other !== language).map(rootOf);
    const pages = all.filter(
      (path) =>
        path.startsWith(rootOf(language)) && !ofOthers.some((root) => path.startsWith(root)),
    );
    // What the desk and the preview say lies in files beside their pages.
    const files = globSync(`_astro/${language}/*.json`, { cwd: dist }).map((file) => `/${file}`);
    const anywhere = [...pages, ...files].map(saidBy).join('\n');
    let shown = 0;
    for (const key of keys) {
      const [name = '', at = ''] = key.split(':');
      const path = at.split('.');
      const named = nodes.filter(
        ({ guide, node: { page, block } }) =>
          page === path[0] && (block === undefined ? String(guide.id) : BLOCKS) === name,
      );
      const there = named
        .map(({ guide, node }) => saidBy(`${rootOf(language)}${guide.id}/${node.id}/`))
        .join('\n');
      // No language without staff has a file of theirs. The desk's own words stand in no guide's page.
      if (!content().text(`text/${language}/${name}.json`).ok) continue;
      const isStaffs = key === PREVIEW_SAYS || path.includes('desk');
      if (isStaffs && !staffLanguages().includes(language)) continue;
      const text = sentencesIn(valueAt(textFile(language, name), path));
      for (const sentence of text) {
        const said = named.length > 0 && !path.includes('desk') ? there : anywhere;
        for (const piece of sentence.split(/\{\{\w+\}\}/))
          expect(said.includes(bare(piece)), `${key}: ${piece}`).toBe(true);
        shown += 1;
      }
    }
    expect(keys.size).toBeGreaterThan(150);
    expect(shown).toBeGreaterThan(keys.size);
  });
});

it('each language has all of a homeowner’s pages, and the staff’s where it speaks to them', () => {
  const pages = readablePagesOf(dist);
  const codes = content().languages();
  const unspoken = Object.keys(codes.ok ? codes.value : {}).filter(
    (code) => !languages().includes(code),
  );
  expect(languages().length + unspoken.length).toBeGreaterThan(3);
  for (const language of unspoken)
    expect(
      pages.filter((path) => path.startsWith(`/${language}/`)),
      language,
    ).toEqual([]);
  const own = (language: string) =>
    pages
      .filter((path) => path.startsWith(rootOf(language)))
      .map((path) => path.slice(rootOf(language).length))
      .filter((path) => path !== '');
  // The safety case is there once, in English.
  const foreign = ['safety', ...others].map((folder) => `${folder}/`);
  const wanted = own(main).filter((path) => !foreign.some((folder) => path.startsWith(folder)));
  expect(wanted.length).toBeGreaterThan(100);
  const staff = /^(?:preview|desk|bench|round|map|staff|learn)\//;
  for (const language of others)
    expect(own(language), language).toEqual(
      staffLanguages().includes(language) ? wanted : wanted.filter((path) => !staff.test(path)),
    );
});

it('the care page leads to every matter, and each says its sources at its foot', () => {
  for (const language of languages()) {
    const top = `${rootOf(language)}care/`;
    const matters = all.filter((path) => path.startsWith(top) && path !== top);
    expect(matters.length).toBeGreaterThan(3);
    const [body = ''] = /<main.*<\/main>/s.exec(markup(top)) ?? [];
    const led = elements(body, 'a').map((link) => target(top, link.get('href') ?? '').path);
    expect(led.toSorted()).toEqual(matters);
    for (const path of matters)
      expect(elements(markup(path), 'footer')[0]?.get('class'), path).toBe('sources');
  }
});

// Web Application Manifest (W3C): what browsers ask of a site that can be put on the home screen.
it.each(languages())('%s: can be installed, and starts at its own first page', (language) => {
  const root = rootOf(language);
  const [link] = elements(markup(root), 'link').filter((one) => one.get('rel') === 'manifest');
  const address = target(root, link?.get('href') ?? '').path;
  const manifest = JSON.parse(markup(address)) as Record<string, unknown> & {
    readonly start_url: string;
    readonly icons: readonly { src: string; sizes: string; purpose: string }[];
  };
  expect(manifest['lang']).toBe(localeOf(language));
  for (const member of ['name', 'short_name', 'description'])
    expect(manifest[member], member).toMatch(/\S/);
  expect(manifest['display']).toBe('standalone');
  expect(target(address, manifest.start_url).path).toBe(root);
  expect(manifest.icons.map(({ sizes, purpose }) => `${sizes} ${purpose}`)).toEqual(
    expect.arrayContaining(['192x192 any', '512x512 any', '512x512 maskable']),
  );
  for (const { src, sizes } of manifest.icons) {
    const png = readFileSync(join(dist, target(address, src).path));
    // PNG (W3C), section 11.2.1: width and height are the first words of the IHDR chunk.
    expect(`${String(png.readUInt32BE(16))}x${String(png.readUInt32BE(20))}`).toBe(sizes);
  }
});

it('what is kept offline is what is published, byte by byte, in every language', async () => {
  for (const language of languages()) {
    const bundles = await bundlesOf(dist, rootOf(language));
    const [shared, ...others] = bundles.values();
    if (!shared) expect.fail(`${language} has no bundle`);
    expect(others.length).toBeGreaterThan(1);
    // Readers' part as hosts that compress send it, bytes.
    const sent = [...bundles.keys()].filter((name) => !name.includes('/staff.'));
    const sizes = sent.map((name) => statSync(join(dist, `${name}.br`)).size);
    expect(sizes.reduce((sum, size) => sum + size)).toBeLessThanOrEqual(260_000);
    const before = unpack(shared, new Uint8Array());
    let files = 0;
    for (const [name, packed] of bundles) {
      const bytes = packed === shared ? before : unpack(packed, before);
      let at = 0;
      for (const [path, size] of packed.files) {
        const file = join(dist, rootOf(language), path.replace(/(^|\/)$/, '$1index.html'));
        // What a page has asked for ahead is there where it is kept.
        const published = readFileSync(file, 'latin1').replace(AHEAD, '');
        const same = Buffer.from(bytes.subarray(at, (at += size))).toString('latin1') === published;
        expect(same, `${name}: ${path}`).toBe(true);
        files += 1;
      }
    }
    expect(files).toBeGreaterThan(100);
  }
});
