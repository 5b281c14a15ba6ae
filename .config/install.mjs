// Installs what package-lock.json asks for, when it is not there yet, and says nothing when it is.
// Every npm script calls this first, so that one command is enough on a fresh clone.
//
// Plain JavaScript: it must run on the machine's own Node (20 or later), before the Node the
// project uses (a package for each platform, first on the PATH of every npm script) is installed.
// Those packages have no install scripts, and the lockfile holds the SHA-512 of each.
// All it prints goes to standard error: the output of the script that follows stays clean.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const modules = join(root, 'node_modules');
const ownNode = join(modules, '.bin', process.platform === 'win32' ? 'node.cmd' : 'node');
/** Its package, where there is one for this platform. */
const ownPackage = `node_modules/node-${process.platform === 'win32' ? 'win' : process.platform}-${process.arch}`;
/** The Node that runs all where there is no package for the platform. */
const LEAST = 24;

/**
 * The packages a lockfile lists, without the project itself.
 * @param {string} file
 * @returns {Record<string, { version?: string, integrity?: string, optional?: boolean }>}
 */
function packagesOf(file) {
  const { packages } = JSON.parse(readFileSync(file, 'utf8'));
  delete packages[''];
  return packages;
}

/** What is missing from node_modules, in a few words; undefined when it matches the lockfile. */
function whatIsMissing() {
  const hidden = join(modules, '.package-lock.json');
  if (!existsSync(hidden)) return 'nothing is installed yet';
  const wanted = packagesOf(join(root, 'package-lock.json'));
  const installed = packagesOf(hidden);
  for (const [path, want] of Object.entries(wanted)) {
    const have = installed[path];
    // npm leaves out optional packages made for other platforms.
    if (have === undefined && want.optional && path !== ownPackage) continue;
    if (have?.version !== want.version || have?.integrity !== want.integrity)
      return `${path.replace(/^.*node_modules\//, '')} is not the locked version`;
  }
  if (!existsSync(ownNode) && Number.parseInt(process.versions.node) < LEAST)
    return 'the project has no Node of its own for this platform';
  return undefined;
}

/**
 * Runs npm with the machine's own Node: the one in node_modules may be replaced meanwhile.
 * @param {string[]} args
 */
function npm(args) {
  const path = (process.env.PATH ?? '')
    .split(delimiter)
    .filter((entry) => !resolve(entry).startsWith(modules))
    .join(delimiter);
  const { status } = spawnSync('npm', [...args, '--no-audit', '--no-fund'], {
    cwd: root,
    env: { ...process.env, PATH: path },
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  return status === 0;
}

/** @param {string} message */
function giveUp(message) {
  console.error(`\n${message}\n`);
  process.exit(1);
}

const missing = whatIsMissing();
if (missing !== undefined) {
  console.error(`Installing packages (${missing}) …`);
  if (!npm(['ci']))
    giveUp('npm ci failed: see its message above. Check the network connection, then try again.');
  const still = whatIsMissing();
  if (still !== undefined)
    giveUp(`The packages are installed, but ${still}.\nInstall Node ${LEAST} or newer yourself.`);
}
