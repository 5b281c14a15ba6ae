import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, extname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

const TOP_LEVEL = [
  ...['DEVELOPERS.md', 'LICENSE', 'README.md', 'astro.config.mjs', 'content', 'package-lock.json'],
  ...['package.json', 'public', 'src', 'tests', 'tsconfig.json'],
];
/** Made by tools; .gitignore names the same. */
const MADE = new Set(['node_modules', '.astro', 'test-results', '.git']);
/** The built site, and what is being built beside it. */
const BUILT = /^dist(?:\.|$)/;
const TEXT = new Set(
  '.astro .css .html .json .md .mjs .svg .ts .tsx .txt .webmanifest .xml .yaml'.split(' '),
);

function filesUnder(dir: string): string[] {
  return readdirSync(dir, { withFileTypes: true }).flatMap((entry) => {
    if (MADE.has(entry.name) || BUILT.test(entry.name)) return [];
    const path = join(dir, entry.name);
    return entry.isDirectory() ? filesUnder(path) : [path];
  });
}

const files = filesUnder(ROOT).map((path) => relative(ROOT, path));
const read = (path: string) => readFileSync(join(ROOT, path), 'utf8');
const texts = files.filter((path) => TEXT.has(extname(path)) || /^\.[^.]+$/.test(path));

interface Manifest {
  scripts: Record<string, string>;
  devDependencies: Record<string, string>;
  /** One for each platform. */
  optionalDependencies?: Record<string, string>;
}
const { scripts } = JSON.parse(read('package.json')) as Manifest;
/** The project's own package, and that of the benchmark with packages of its own. */
const folders = files.filter((path) => basename(path) === 'package.json').map(dirname);

describe('the house', () => {
  it('has the planned top level and nothing else beside dotfiles', () => {
    const top = readdirSync(ROOT).filter(
      (name) => !name.startsWith('.') && !(MADE.has(name) || BUILT.test(name)),
    );
    expect(top.toSorted()).toEqual(TOP_LEVEL.toSorted());
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
    expect(texts.filter((path) => host.test(read(path)))).toEqual([]);
  });

  it.each(folders)('locks packages by content, not by host: %s', (folder) => {
    const lock = read(join(folder, 'package-lock.json'));
    expect(lock).toContain('"integrity"');
    expect(lock).not.toContain('"resolved"');
  });
});

describe('the packages', () => {
  interface Locked {
    version: string;
  }

  it.each(folders)('are asked for in one exact version, the one that is locked: %s', (folder) => {
    const manifest = JSON.parse(read(join(folder, 'package.json'))) as Manifest;
    const { packages } = JSON.parse(read(join(folder, 'package-lock.json'))) as {
      packages: Record<string, Locked> & Record<'', Manifest>;
    };
    const { devDependencies, optionalDependencies } = manifest;
    const asked = Object.entries({ ...devDependencies, ...optionalDependencies });
    expect(asked.length).toBeGreaterThan(0);
    // SemVer 2.0.0, section 2: three numbers, no range; before them the package another name is for.
    for (const [name, asking] of asked) {
      const version = /^(?:npm:.+@)?(\d+\.\d+\.\d+)$/.exec(asking)?.[1];
      expect(version, name).toBeDefined();
      expect(packages[`node_modules/${name}`]?.version, name).toBe(version);
    }
    expect(packages['']).toMatchObject({
      devDependencies,
      ...(optionalDependencies ? { optionalDependencies } : {}),
    });
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
