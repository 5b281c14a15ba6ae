// Installs the distribution's Chromium when there is none; silent when there is one.
import { spawnSync } from 'node:child_process';
import { findChromium } from './browsers.ts';

function runs(command: string, args: string[], quiet = false): boolean {
  const { status } = spawnSync(command, args, {
    stdio: quiet ? 'ignore' : 'inherit',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  return status === 0;
}

function giveUp(reason: string): never {
  console.error(
    `${reason}\nInstall Chromium yourself and set CHROMIUM to its path, then run the tests again.`,
  );
  process.exit(1);
}

/** Runs apt-get, as root or through sudo when it asks for no password. */
function apt(...args: string[]): boolean {
  if (process.getuid?.() === 0) return runs('apt-get', args);
  return runs('sudo', ['-n', 'DEBIAN_FRONTEND=noninteractive', 'apt-get', ...args]);
}

if (findChromium() === undefined) {
  const asked = process.env['CHROMIUM'];
  if (asked !== undefined && asked !== '') giveUp(`CHROMIUM=${asked}: there is no such file.`);
  if (!runs('apt-get', ['--version'], true)) giveUp('No Chromium, and no apt-get to install it.');
  if (process.getuid?.() !== 0 && !runs('sudo', ['-n', 'true'], true))
    giveUp('No Chromium, and installing it needs root or sudo without a password.');
  console.log('Installing Chromium with apt-get …');
  if (!apt('update') || !apt('install', '--yes', '--no-install-recommends', 'chromium'))
    giveUp('apt-get could not install Chromium: see its message above.');
  if (findChromium() === undefined) giveUp('apt-get installed no Chromium that can be found.');
}
