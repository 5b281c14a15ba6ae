import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const SCRIPT = fileURLToPath(new URL('../../../.config/install.mjs', import.meta.url));

let root: string;
const at = (...path: string[]) => join(root, ...path);

function write(path: string, content: unknown): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
}

const lock = (version: string) => ({
  packages: {
    '': { name: 'made-up' },
    'node_modules/a': { version, integrity: `sha512-${version}` },
    'node_modules/b/node_modules/for-another-platform': { version: '2.0.0', optional: true },
  },
});

/** Puts an npm first on the PATH that notes how it was called and does what `body` says. */
function fakeNpm(body: string): void {
  write(at('bin', 'npm'), `#!/bin/sh\necho "$@" >> "${at('calls')}"\necho noise\n${body}\n`);
  chmodSync(at('bin', 'npm'), 0o755);
}

/** What a real `npm ci` leaves behind. */
const INSTALLS = () =>
  `mkdir -p "${at('node_modules/.bin')}" && touch "${at('node_modules/.bin/node')}" && cp "${at('package-lock.json')}" "${at('node_modules/.package-lock.json')}"`;

function install(): { status: number | null; out: string; err: string; calls: string[] } {
  const { status, stdout, stderr } = spawnSync(process.execPath, [at('.config', 'install.mjs')], {
    encoding: 'utf8',
    env: { ...process.env, PATH: `${at('bin')}:${process.env['PATH'] ?? ''}` },
  });
  const calls = existsSync(at('calls')) ? readFileSync(at('calls'), 'utf8').trim().split('\n') : [];
  return { status, out: stdout, err: stderr, calls };
}

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'hobnote-install-'));
  mkdirSync(at('.config'));
  cpSync(SCRIPT, at('.config', 'install.mjs'));
  write(at('package-lock.json'), lock('1.0.0'));
  fakeNpm(INSTALLS());
});

afterEach(() => {
  rmSync(root, { recursive: true });
});

it('runs nothing that the lockfile has no hash of', () => {
  const lockfile = fileURLToPath(new URL('../../../package-lock.json', import.meta.url));
  const { packages } = JSON.parse(readFileSync(lockfile, 'utf8')) as {
    packages: Record<string, { integrity?: string; hasInstallScript?: boolean; link?: boolean }>;
  };
  const own = Object.entries(packages).filter(([path]) => path !== '');
  expect(own.filter(([, { integrity }]) => !integrity?.startsWith('sha512-'))).toEqual([]);
  // A script of a package may fetch anything: esbuild's was looked at.
  const scripts = own.filter(([, { hasInstallScript }]) => hasInstallScript).map(([path]) => path);
  expect(scripts).toEqual(['node_modules/esbuild']);
  // The Node that runs it all is among them.
  for (const platform of ['linux-x64', 'linux-arm64', 'win-x64'])
    expect(packages[`node_modules/node-${platform}`]?.integrity, platform).toBeTruthy();
});

describe('install', () => {
  it('installs on a fresh clone, printing nothing to standard output', () => {
    const { status, out, calls } = install();
    expect(calls).toEqual(['ci --no-audit --no-fund']);
    expect(status).toBe(0);
    expect(out).toBe('');
  });

  it('is silent and calls nothing when all is there', () => {
    install();
    rmSync(at('calls'));
    expect(install()).toEqual({ status: 0, out: '', err: '', calls: [] });
  });

  it('installs again when the lockfile has moved on', () => {
    install();
    write(at('package-lock.json'), lock('1.0.1'));
    const { err, calls } = install();
    expect(calls).toHaveLength(2);
    expect(err).toContain('a is not the locked version');
  });

  it('is content with the machine’s own Node 24 where none comes as a package', () => {
    fakeNpm(`${INSTALLS()}; rm "${at('node_modules/.bin/node')}"`);
    expect(Number.parseInt(process.versions.node)).toBeGreaterThanOrEqual(24);
    expect(install().status).toBe(0);
    // As on a machine with an older one: the same file asks for a Node that there is not yet.
    const script = readFileSync(SCRIPT, 'utf8').replace('LEAST = 24', 'LEAST = 99');
    write(at('.config', 'install.mjs'), script);
    const { status, err } = install();
    expect(status).toBe(1);
    expect(err).toContain('Install Node 99');
  });

  it('installs again where only the project’s own Node is not there', () => {
    install();
    const own = `node_modules/node-${process.platform}-${process.arch}`;
    const { packages } = lock('1.0.0');
    write(at('package-lock.json'), {
      packages: { ...packages, [own]: { version: '24.0.0', optional: true } },
    });
    expect(install().err).toContain('is not the locked version');
  });

  it('says what to do when npm fails', () => {
    fakeNpm('exit 1');
    const { status, err } = install();
    expect(status).toBe(1);
    expect(err).toContain('Check the network connection');
  });
});
