// Installs the distribution's Chromium when there is none; silent when there is one.
import { aptInstall } from './apt.ts';
import { findChromium } from './browsers.ts';

function giveUp(reason: string): never {
  console.error(
    `${reason}\nInstall Chromium yourself and set CHROMIUM to its path, then run the tests again.`,
  );
  process.exit(1);
}

if (findChromium() === undefined) {
  const asked = process.env['CHROMIUM'];
  if (asked !== undefined && asked !== '') giveUp(`CHROMIUM=${asked}: there is no such file.`);
  const problem = aptInstall('chromium');
  if (problem !== undefined) giveUp(problem);
  if (findChromium() === undefined) giveUp('apt-get installed no Chromium that can be found.');
}
