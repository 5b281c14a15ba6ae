import puppeteer, { type Page } from 'puppeteer-core';
import { firefox } from '../../../.config/browsers.ts';
import { PATIENCE, until, type Engine, type Tab } from './engine.ts';

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
  // Asked of the page itself: the driver's own ways put a library of theirs into every page first.
  const sees = (selector: string) =>
    page.evaluate(
      (of) => [...document.querySelectorAll(of)].some((one) => one.getClientRects().length > 0),
      selector,
    );
  /** The middle of the first that shows, scrolled into sight; a page on its way has none. */
  const middle = (selector: string) =>
    page
      .evaluate((of) => {
        const one = [...document.querySelectorAll(of)].find(
          (each) =>
            each.checkVisibility({ visibilityProperty: true }) &&
            each.getBoundingClientRect().width > 0,
        );
        one?.scrollIntoView({ block: 'center', behavior: 'instant' });
        const box = one?.getBoundingClientRect();
        return box ? { x: box.x + box.width / 2, y: box.y + box.height / 2 } : null;
      }, selector)
      .catch(() => null);
  const ready = (selector: string) =>
    until(async () => (await middle(selector)) ?? undefined, selector);
  return {
    goto: async (url) => {
      await page.goto(url, { waitUntil: 'load' });
    },
    // Asked of the page: the protocol does not tell of pages that come back from memory.
    url: () => page.evaluate(() => location.href),
    click: async (selector) => {
      const { x, y } = await ready(selector);
      await page.mouse.click(x, y);
    },
    type: async (selector, text) => {
      const { x, y } = await ready(selector);
      await page.mouse.click(x, y);
      await page.keyboard.type(text);
    },
    texts: async (selector) => {
      await ready(selector);
      return page.evaluate(
        (of) => [...document.querySelectorAll(of)].map((one) => one.textContent.trim()),
        selector,
      );
    },
    sees,
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
