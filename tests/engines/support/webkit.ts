import { spawn, type ChildProcess } from 'node:child_process';
import { createServer } from 'node:net';
import { Builder, By, error, type WebDriver } from 'selenium-webdriver';
import { miniBrowser, virtualScreen, webkitDriver } from '../../../.config/browsers.ts';
import { PATIENCE, until, type Engine, type Size, type Tab } from './engine.ts';

function freePort(): Promise<number> {
  return new Promise((done, fail) => {
    const server = createServer().once('error', fail);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => {
        done(typeof address === 'object' && address ? address.port : 0);
      });
    });
  });
}

/** The driver on a virtual screen, in a process group of its own. */
async function startDriver(): Promise<{ readonly url: string; readonly process: ChildProcess }> {
  const port = await freePort();
  const child = spawn(
    virtualScreen(),
    ['--auto-servernum', '--server-args=-screen 0 1600x1200x24', webkitDriver(), `--port=${port}`],
    { detached: true, stdio: 'ignore' },
  );
  const url = `http://127.0.0.1:${port}`;
  await until(
    () =>
      fetch(`${url}/status`).then(
        ({ ok }) => (ok ? true : undefined),
        () => undefined,
      ),
    'the WebKit driver',
  );
  return { url, process: child };
}

/** Collects what goes wrong in a page; put there anew in each page, as the protocol tells nothing. */
const WATCH = `if (!window.wrong) { window.wrong = [];
  addEventListener('error', (event) => window.wrong.push(String(event.message)));
  addEventListener('unhandledrejection', (event) => window.wrong.push(String(event.reason))); }`;

/** The tab a driver's commands go to. */
const current = new WeakMap<WebDriver, string>();

/** A tab alone, or one of several: then each command is sent to its own. */
async function tabOf(driver: WebDriver): Promise<Tab> {
  const problems: string[] = [];
  const own = await driver.getWindowHandle();
  current.set(driver, own);
  const here = async () => {
    if (current.get(driver) === own) return;
    await driver.switchTo().window(own);
    current.set(driver, own);
  };
  /** A script in the page; asked again of the next page where the one it was asked of goes away. */
  const run = <T>(script: string, ...facts: unknown[]): Promise<T> =>
    until(async () => {
      await here();
      return driver.executeScript<T>(script, ...facts).catch((problem: unknown) => {
        if (problem instanceof error.NoSuchFrameError) return undefined;
        throw problem;
      });
    }, script);
  const collect = async () => {
    const wrong = await run<string[]>('return window.wrong ?? []');
    problems.push(...wrong);
    await run(`${WATCH} return true;`);
  };
  const visible = (selector: string) =>
    until(async () => {
      await here();
      for (const one of await driver.findElements(By.css(selector)))
        if (await one.isDisplayed().catch(() => false)) return one;
      return undefined;
    }, selector);
  return {
    goto: async (url) => {
      await here();
      await driver.get(url);
      await collect();
    },
    url: () => here().then(() => driver.getCurrentUrl()),
    click: async (selector) => {
      await (await visible(selector)).click();
      await collect();
    },
    type: async (selector, text) => {
      await (await visible(selector)).sendKeys(text);
    },
    texts: async (selector) => {
      await visible(selector);
      return run<string[]>(
        'return [...document.querySelectorAll(arguments[0])].map((one) => one.textContent.trim())',
        selector,
      );
    },
    sees: (selector) =>
      run<boolean>(
        'return [...document.querySelectorAll(arguments[0])].some((one) => one.getClientRects().length > 0)',
        selector,
      ),
    back: () => here().then(() => driver.navigate().back()),
    loaded: () => run<boolean>('return document.readyState === "complete"'),
    sideways: () => run<number>('return document.documentElement.scrollWidth - window.innerWidth'),
    run: (expression) => run(`return ${expression}`),
    picture: async () => {
      await here();
      return Buffer.from(await driver.takeScreenshot(), 'base64');
    },
    problems: async () => {
      await collect();
      return problems;
    },
    beside: async () => {
      await driver.switchTo().newWindow('tab');
      return tabOf(driver);
    },
    close: () => driver.quit(),
  };
}

/** The window so that the page inside has the size asked for. */
async function fit(driver: WebDriver, { width, height }: Size): Promise<void> {
  const window = driver.manage().window();
  await window.setRect({ x: 0, y: 0, width, height });
  const [innerWidth, innerHeight] = await driver.executeScript<[number, number]>(
    'return [window.innerWidth, window.innerHeight]',
  );
  await window.setRect({
    ...{ x: 0, y: 0, width: 2 * width - innerWidth },
    height: 2 * height - innerHeight,
  });
}

/** WebKit's own small browser, driven by WebDriver on a virtual screen. */
export async function startWebkit(): Promise<Engine> {
  const { url, process: child } = await startDriver();
  const open = async (size: Size) => {
    const driver = await new Builder()
      .usingServer(url)
      .withCapabilities({
        browserName: 'MiniBrowser',
        'webkitgtk:browserOptions': { binary: miniBrowser(), args: ['--automation'] },
      })
      .build();
    await driver.manage().setTimeouts({ pageLoad: PATIENCE, script: PATIENCE });
    await fit(driver, size);
    return { driver, tab: await tabOf(driver) };
  };
  const probe = await open({ width: 800, height: 600 });
  const version = (await probe.driver.getCapabilities()).getBrowserVersion() ?? '';
  await probe.tab.close();
  return {
    name: 'WebKit',
    version,
    open: async (size) => (await open(size)).tab,
    close: () => {
      if (child.pid !== undefined) process.kill(-child.pid);
      return Promise.resolve();
    },
  };
}
