import { existsSync, readdirSync } from 'node:fs';

const KNOWN_PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/**
 * Path of the Chromium that tests and benchmarks drive: `CHROMIUM` when set, else where
 * distributions put it. Undefined when there is none.
 */
export function findChromium(): string | undefined {
  const asked = process.env['CHROMIUM'];
  if (asked !== undefined && asked !== '') return existsSync(asked) ? asked : undefined;
  return KNOWN_PLACES.find((place) => existsSync(place));
}

/** The same, or an error that says what to do. */
export function chromium(): string {
  const found = findChromium();
  if (found === undefined)
    throw new Error(
      'No Chromium found. Run "node .config/browser-install.ts" (Debian, Ubuntu), or set CHROMIUM to the path of one.',
    );
  return found;
}

/** Start flags: nothing that calls home, nothing that needs a display or a kernel sandbox. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--disable-quic',
  '--disable-gpu',
];

/** A program at one of these places, or an error that says what to do. */
function program(name: string, places: readonly string[]): string {
  const found = places.find((place) => existsSync(place));
  if (found === undefined)
    throw new Error(
      `No ${name} found. Run "node .config/engines-install.ts" (Debian, Ubuntu), or install it yourself.`,
    );
  return found;
}

/** Path of the Firefox that tests drive. */
export function firefox(): string {
  return program('Firefox', ['/usr/bin/firefox-esr', '/usr/bin/firefox']);
}

/** Path of WebKit's WebDriver. */
export function webkitDriver(): string {
  return program('WebKitWebDriver', ['/usr/bin/WebKitWebDriver']);
}

/** Path of the program that gives WebKit a screen where there is none. */
export function virtualScreen(): string {
  return program('xvfb-run', ['/usr/bin/xvfb-run']);
}

/** Path of WebKit's own small browser, which lies in a folder of the machine's kind. */
export function miniBrowser(): string {
  const folders = readdirSync('/usr/lib').flatMap((kind) =>
    ['4.1', '6.0', '4.0'].map((version) => `/usr/lib/${kind}/webkit2gtk-${version}/MiniBrowser`),
  );
  return program('MiniBrowser', folders);
}
