// Installs the distribution's Firefox and WebKit driver when there are none; silent when there are.
import { aptInstall } from './apt.ts';
import { firefox, miniBrowser, virtualScreen, webkitDriver } from './browsers.ts';

/** What each engine's tests start, and the package that holds it. */
const NEEDED: readonly (readonly [find: () => string, name: string])[] = [
  [firefox, 'firefox-esr'],
  [webkitDriver, 'webkit2gtk-driver'],
  [miniBrowser, 'webkit2gtk-driver'],
  [virtualScreen, 'xvfb'],
];

function isThere(find: () => string): boolean {
  try {
    find();
    return true;
  } catch {
    return false;
  }
}

for (const [find, name] of NEEDED) {
  if (isThere(find)) continue;
  const problem = aptInstall(name);
  if (problem === undefined && isThere(find)) continue;
  console.error(
    `${problem ?? `${name} was installed and cannot be found.`}\nInstall ${name} yourself, then run the tests again.`,
  );
  process.exitCode = 1;
}
