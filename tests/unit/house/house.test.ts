import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

const TOP_LEVEL = [
  ...['DEVELOPERS.md', 'LICENSE', 'README.md', 'astro.config.mjs', 'content', 'package-lock.json'],
  ...['package.json', 'public', 'src', 'tests', 'tsconfig.json'],
];
/** Made by tools; .gitignore names the same. */
const MADE = new Set(['node_modules', 'dist', '.astro', 'test-results', '.git']);
const TEXT = new Set(
  '.astro .css .html .json .md .mjs .svg .ts .tsx .txt .webmanifest .xml .yaml'.split(' '),
);
const SOURCE = new Set('.astro .css .mjs .ts .tsx'.split(' '));

function filesUnder(dir: string): string[] {
  return readdirSync(dir, { withFileTypes: true }).flatMap((entry) => {
    if (MADE.has(entry.name)) return [];
    const path = join(dir, entry.name);
    return entry.isDirectory() ? filesUnder(path) : [path];
  });
}

const files = filesUnder(ROOT).map((path) => relative(ROOT, path));
const read = (path: string) => readFileSync(join(ROOT, path), 'utf8');
const texts = files.filter((path) => TEXT.has(extname(path)) || /^\.[^.]+$/.test(path));
const sources = files.filter((path) => SOURCE.has(extname(path)));

interface Manifest {
  scripts: Record<string, string>;
  devDependencies: Record<string, string>;
}
const { scripts, devDependencies } = JSON.parse(read('package.json')) as Manifest;

describe('the house', () => {
  it('has the planned top level and nothing else beside dotfiles', () => {
    const top = readdirSync(ROOT).filter((name) => !name.startsWith('.') && !MADE.has(name));
    expect(top.toSorted()).toEqual(TOP_LEVEL.toSorted());
  });

  it('has no source file over 300 lines', () => {
    expect(sources.length).toBeGreaterThan(20);
    const long = sources.filter((path) => read(path).trimEnd().split('\n').length > 300);
    expect(long).toEqual([]);
  });

  it('names no folder of anybody’s machine', () => {
    expect(texts.length).toBeGreaterThan(20);
    const folder =
      /(?<![\w.*-])\/(?:home|Users|root|work|private|var\/folders)\/\w|[A-Z]:\\Users\\/;
    expect(texts.filter((path) => folder.test(read(path)))).toEqual([]);
  });

  it('names no package registry', () => {
    const host =
      /registry(?:\.[a-z]+){2}|npm(?:js)\.(?:com|org)|deb(?:\.debian)\.org|py(?:pi)\.org/;
    const naming = [...texts, 'package-lock.json'].filter((path) => host.test(read(path)));
    expect(naming).toEqual([]);
  });

  it('locks packages by content, not by host', () => {
    const lock = read('package-lock.json');
    expect(lock).toContain('"integrity"');
    expect(lock).not.toContain('"resolved"');
  });
});

describe('the packages', () => {
  interface Locked {
    version: string;
    devDependencies: Record<string, string>;
  }
  const { packages } = JSON.parse(read('package-lock.json')) as {
    packages: Record<string, Locked>;
  };
  const asked = Object.entries(devDependencies);

  it('are asked for in one exact version, the one that is locked', () => {
    expect(asked.length).toBeGreaterThan(20);
    // SemVer 2.0.0, section 2: three numbers, no range; npm's alias names another package before it.
    for (const [name, wanted] of asked) {
      expect(wanted, name).toMatch(/^(?:npm:[\w@/-]+@)?\d+\.\d+\.\d+$/);
      expect(packages[`node_modules/${name}`]?.version, name).toBe(wanted.replace(/^npm:.*@/, ''));
    }
    expect(packages['']?.devDependencies).toEqual(Object.fromEntries(asked));
  });
});

describe('the scripts', () => {
  const own = Object.entries(scripts).filter(
    ([name]) => !(name.startsWith('pre') && name.slice(3) in scripts),
  );

  it('install what is missing first', () => {
    expect(own.length).toBeGreaterThan(5);
    for (const [name] of own) expect(scripts[`pre${name}`], name).toBe('node .config/install.mjs');
  });

  it('name the compiler by its file: two packages bring a program "tsc"', () => {
    const lines = own.map(([, line]) => line);
    expect(lines.some((line) => line.includes('typescript7/bin/tsc'))).toBe(true);
    expect(lines.filter((line) => /(?<!bin\/)\btsc\b/.test(line))).toEqual([]);
  });

  it('run files that are there', () => {
    const run = own.flatMap(([, line]) =>
      [...line.matchAll(/\bnode (\S+)/g)].map(([, file]) => file),
    );
    expect(run.length).toBeGreaterThan(3);
    expect(run.filter((file) => !existsSync(join(ROOT, file ?? '')))).toEqual([]);
  });
});
