import puppeteer, { type Page } from 'puppeteer-core';
import { firefox } from '../../../.config/browsers.ts';
import { PATIENCE, type Engine, type Tab } from './engine.ts';

function tabOf(page: Page): Tab {
  const problems: string[] = [];
  const note = (problem: string): void => {
    // A page left while its worker still fetches: Firefox reports the fetch it cut off itself.
    if (!problem.includes('A ServiceWorker intercepted the request')) problems.push(problem);
  };
  page.on('pageerror', (error) => note(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') note(message.text());
  });
  page.setDefaultTimeout(PATIENCE);
  const ready = (selector: string) => page.waitForSelector(selector, { visible: true });
  return {
    goto: async (url) => {
      await page.goto(url, { waitUntil: 'load' });
    },
    // Asked of the page: the protocol does not tell of pages that come back from memory.
    url: () => page.evaluate(() => location.href),
    click: async (selector) => {
      await (await ready(selector))?.click();
    },
    type: async (selector, text) => {
      await (await ready(selector))?.type(text);
    },
    texts: async (selector) => {
      await ready(selector);
      return page.$$eval(selector, (all) => all.map((one) => one.textContent.trim()));
    },
    sees: (selector) =>
      page.$$eval(selector, (all) => all.some((one) => one.getClientRects().length > 0)),
    // The protocol's own way back waits for a load that a page kept in memory never makes.
    back: () => page.evaluate(() => history.back()),
    loaded: () => page.evaluate(() => document.readyState === 'complete'),
    sideways: () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    run: <T>(expression: string) => page.evaluate(expression) as Promise<T>,
    picture: () => page.screenshot(),
    problems: () => Promise.resolve(problems),
    beside: async () => {
      const other = await page.browserContext().newPage();
      await other.setViewport(page.viewport());
      return tabOf(other);
    },
    close: () => page.close(),
  };
}

/**
 * Firefox over WebDriver BiDi. With scripts off the protocol cannot look into a page: what
 * the guide does then is tested in Chromium.
 */
export async function startFirefox(): Promise<Engine> {
  const browser = await puppeteer.launch({
    browser: 'firefox',
    executablePath: firefox(),
    headless: true,
    extraPrefsFirefox: {
      'intl.accept_languages': 'en-US, en',
      // Nothing that calls home.
      'app.update.enabled': false,
      'network.captive-portal-service.enabled': false,
      'network.connectivity-service.enabled': false,
    },
  });
  return {
    name: 'Firefox',
    version: await browser.version(),
    open: async (size) => {
      const context = await browser.createBrowserContext();
      const page = await context.newPage();
      await page.setViewport(size);
      const tab = tabOf(page);
      return { ...tab, close: () => context.close() };
    },
    close: () => browser.close(),
  };
}
