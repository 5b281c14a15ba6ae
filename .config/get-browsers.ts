// Adds the browsers, the web server and the model checker that tests run, where they are missing: as packages of
// Debian where that can be done without a question, Chromium else by Playwright's own download.
// Silent where all is there. Tells what is missing still: the tests that need it say what that means.
import { spawnSync } from 'node:child_process';
import { missing, PROGRAMS, type Program } from './browsers.ts';

function run(command: string, args: readonly string[], quiet = false): boolean {
  return spawnSync(command, args, { stdio: quiet ? 'ignore' : 'inherit' }).status === 0;
}

/** Runs apt-get, as root or through sudo where that asks for no password. */
function apt(...args: string[]): boolean {
  // Debian's run level 1 starts no service: what is installed here is only for tests.
  const line = ['env', 'DEBIAN_FRONTEND=noninteractive', 'RUNLEVEL=1', 'apt-get', ...args];
  const [command = '', ...rest] = process.getuid?.() === 0 ? line : ['sudo', '-n', ...line];
  return run(command, rest);
}

const canInstall = () =>
  run('apt-get', ['--version'], true) &&
  (process.getuid?.() === 0 || run('sudo', ['-n', 'true'], true));

const all = Object.keys(PROGRAMS) as Program[];
/** One that a variable names is never looked for elsewhere. */
const wanted = () =>
  all.filter((name) => missing(name).length > 0 && !process.env[name.toUpperCase()]);

if (wanted().length > 0 && canInstall()) {
  const packages = wanted().flatMap(missing);
  console.log(`Installing with apt-get: ${packages.join(', ')} …`);
  const add = (...names: string[]) => apt('install', '--yes', '--no-install-recommends', ...names);
  // One that this distribution lacks must not keep the others out.
  if (apt('update') && !add(...packages)) for (const one of packages) add(one);
  // Where its small form is not packaged.
  if (missing('Chromium').length > 0) add('chromium');
}
if (wanted().includes('Chromium')) {
  console.log('Downloading Chromium with Playwright …');
  run(process.execPath, ['node_modules/@playwright/test/cli.js', 'install', 'chromium'], true);
}
for (const name of all.filter((one) => missing(one).length > 0)) {
  const named = process.env[name.toUpperCase()];
  const why = named ? `${name.toUpperCase()}=${named} is no program` : 'could not be installed';
  console.log(`No ${name}: ${why}; ${PROGRAMS[name].add}.`);
}
