import { existsSync } from 'node:fs';

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
