/** Engines that look at a page with other eyes than axe-core. Their packages are this folder's own. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import type { Page } from '@playwright/test';

const own = createRequire(import.meta.url);
const load = async (name: string): Promise<unknown> =>
  import(pathToFileURL(own.resolve(name)).href);

/** Something that an engine holds to be wrong. */
export interface Finding {
  readonly engine: string;
  readonly rule: string;
  readonly page: string;
  /** A way to the element, as the engine tells it. */
  readonly at: string;
  /** The element's markup, as far as the engine tells it. */
  readonly html: string;
  readonly says: string;
}

type Found = Omit<Finding, 'engine' | 'page'>;

/** An engine in the browser, for one page as it is shown. */
export interface Engine {
  readonly name: string;
  readonly package: string;
  readonly look: (page: Page) => Promise<readonly Found[]>;
}

const ibm = readFileSync(own.resolve('accessibility-checker-engine/ace.js'), 'utf8');

interface AceResult {
  readonly ruleId: string;
  readonly value: readonly [string, string];
  readonly path: { readonly dom: string };
  readonly snippet: string;
  readonly message: string;
}

/** IBM's engine, rules for WCAG 2.2 A and AA: what it is sure of, no "needs review". */
const equalAccess: Engine = {
  name: 'Equal Access',
  package: 'accessibility-checker-engine',
  async look(page) {
    await page.evaluate(ibm);
    const results = await page.evaluate<AceResult[]>(
      `new ace.Checker().check(document, ['WCAG_2_2']).then(({ results }) =>
        results
          .filter(({ value }) => value[0] === 'VIOLATION' && value[1] === 'FAIL')
          .map(({ ruleId, value, path, snippet, message }) => ({ ruleId, value, path, snippet, message })))`,
    );
    return results.map(({ ruleId, path, snippet, message }) => ({
      ...{ rule: ruleId, at: path.dom, html: snippet, says: message },
    }));
  },
};

interface AlfaOutcome {
  readonly toJSON: () => { readonly outcome: string };
  readonly rule: { readonly uri: string };
  readonly target: { readonly path?: () => string; readonly toString: () => string };
}
interface Alfa {
  readonly Playwright: { readonly toPage: (handle: unknown) => Promise<unknown> };
  readonly Audit: {
    readonly of: (
      page: unknown,
      rules: unknown,
    ) => { readonly evaluate: () => PromiseLike<Iterable<AlfaOutcome>> };
  };
  readonly default: unknown;
}

/** As many rows and items in a row as Alfa is shown: more than any page of a homeowner has. */
const ALIKE = 12;

/** Siteimprove's engine, all its rules: what fails; no question is answered for it. */
const alfa: Engine = {
  name: 'Alfa',
  package: '@siteimprove/alfa-rules',
  async look(page) {
    const [{ Playwright }, { Audit }, rules] = (await Promise.all(
      ['@siteimprove/alfa-playwright', '@siteimprove/alfa-act', '@siteimprove/alfa-rules'].map(
        load,
      ),
    )) as [Alfa, Alfa, Alfa];
    // It takes a quarter of an hour for a page with hundreds of rows and drawings; these are alike.
    await page.evaluate((most) => {
      for (const row of document.querySelectorAll(`:is(tr, li):nth-child(n + ${most + 1})`))
        row.remove();
      for (const drawing of [...document.querySelectorAll('main .map')].slice(2)) drawing.remove();
    }, ALIKE);
    const handle = await page.evaluateHandle(() => window.document);
    const outcomes = await Audit.of(await Playwright.toPage(handle), rules.default).evaluate();
    await handle.dispose();
    return [...outcomes]
      .filter((outcome) => outcome.toJSON().outcome === 'failed')
      .map(({ rule, target }) => ({
        rule: rule.uri.replace(/^.*\//, ''),
        at: target.path?.() ?? '',
        html: target.toString().slice(0, 200),
        says: rule.uri,
      }));
  },
};

const qualwebParts = [
  'qw-page/dist/qw-page.bundle.js',
  'util/dist/__webpack/util.bundle.js',
  'act-rules/dist/__webpack/act.bundle.js',
  'wcag-techniques/dist/__webpack/wcag.bundle.js',
].map((file) => readFileSync(new URL(`node_modules/@qualweb/${file}`, import.meta.url), 'utf8'));

/**
 * QualWeb's ACT rules and WCAG techniques: what fails. Its core would bring a browser of its own, so its
 * parts are put into the page as its core does it.
 */
const qualweb: Engine = {
  name: 'QualWeb',
  package: '@qualweb/act-rules',
  async look(page) {
    const scripts = [];
    for (const content of qualwebParts) scripts.push(await page.addScriptTag({ content }));
    // The page is left as it was.
    for (const script of scripts)
      await script.evaluate((node) => node.parentNode?.removeChild(node));
    return page.evaluate<Found[]>(`(() => {
      window.qwPage = new QWPage(document, true);
      const data = { sourceHtml: document.documentElement.outerHTML };
      const language = { translate: 'en', fallback: 'en' };
      const reports = [
        new ACTRulesRunner({}, language).configure({}).test(data).testSpecial().getReport(),
        new WCAGTechniquesRunner({}, language).configure({}).test(data).getReport(),
      ];
      for (const marked of document.querySelectorAll('[qw-selector]'))
        for (const name of marked.getAttributeNames().filter((one) => one.startsWith('qw-')))
          marked.removeAttribute(name);
      return reports.flatMap(({ assertions }) =>
        Object.values(assertions).flatMap(({ code, name, results }) =>
          results
            .filter(({ verdict }) => verdict === 'failed')
            .flatMap(({ description, elements = [] }) =>
              (elements.length > 0 ? elements : [{}]).map(({ htmlCode = '', pointer = '' }) => ({
                rule: code, says: name + ': ' + description, html: htmlCode, at: pointer })))));
    })()`);
  },
};

export const engines: readonly Engine[] = [equalAccess, qualweb, alfa];

interface NuMessage {
  readonly type: string;
  readonly url: string;
  readonly message: string;
  readonly extract?: string;
}

/** The Nu HTML Checker over files, all in one run of Java: errors and warnings. */
export function nu(files: readonly string[]): readonly Found[] {
  const jar = own.resolve('vnu-jar/build/dist/vnu.jar');
  const { stdout, status, error } = spawnSync(
    'java',
    ['-Xss1024k', '-jar', jar, '--format', 'json', '--stdout', ...files],
    { encoding: 'utf8', maxBuffer: 1 << 28 },
  );
  if (error || status === null)
    throw new Error('The Nu checker needs Java: install a JRE, 11 or newer.');
  const { messages } = JSON.parse(stdout) as { messages: readonly NuMessage[] };
  return messages.map(({ type, url, message, extract = '' }) => ({
    ...{
      rule: message.replace(/“[^”]*”/g, '“…”'),
      at: url,
      html: extract,
      says: `${type}: ${message}`,
    },
  }));
}

/** The version of an engine's package. */
export const versionOf = (name: string): string =>
  (
    JSON.parse(
      readFileSync(new URL(`node_modules/${name}/package.json`, import.meta.url), 'utf8'),
    ) as { version: string }
  ).version;
