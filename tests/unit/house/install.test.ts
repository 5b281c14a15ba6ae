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
  `mkdir -p "${at('node_modules/node/bin')}" && touch "${at('node_modules/node/bin/node')}" && cp "${at('package-lock.json')}" "${at('node_modules/.package-lock.json')}"`;

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

  it('asks for the install script of the project’s Node when it did not run', () => {
    fakeNpm(`case "$1" in ci) ${INSTALLS()}; rm "${at('node_modules/node/bin/node')}";; esac`);
    const { status, err, calls } = install();
    expect(calls[1]).toMatch(/^rebuild node/);
    expect(status).toBe(1);
    expect(err).toContain('ignore-scripts');
  });

  it('says what to do when npm fails', () => {
    fakeNpm('exit 1');
    const { status, err } = install();
    expect(status).toBe(1);
    expect(err).toContain('Check the network connection');
  });
});
