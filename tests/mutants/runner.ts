/**
 * A test runner for Stryker: test files as they stand, in Node itself and all in one process, so that a
 * slip costs milliseconds. Vitest starts anew for each, which takes half a second.
 */
import { registerHooks } from 'node:module';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { testsOf } from './suite.ts';
import type { Test } from './suite.ts';

/** What Stryker's switches in the code look at. */
interface Switches {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitLimit?: number | undefined;
  hitCount?: number;
  mutantCoverage?: unknown;
}
interface MutantRun {
  readonly activeMutant: { readonly id: string };
  readonly testFilter?: readonly string[];
  readonly hitLimit?: number;
  /** Static: the slip is in what runs as a file loads. */
  readonly mutantActivation: 'runtime' | 'static';
}

const switches: Switches = ((globalThis as { __stryker__?: Switches }).__stryker__ ??= {});
const suite = new URL('suite.ts', import.meta.url).href;
/** The copy of the project that Stryker made: it goes there before the first tests, not before this. */
const project = (): string => pathToFileURL(`${process.cwd()}/`).href;
/** Node keeps what it has loaded, and where it found it: with another number it is loaded again. */
let version = 0;
registerHooks({
  resolve(name, context, next) {
    if (name === 'vitest') return { url: suite, format: 'module-typescript', shortCircuit: true };
    const found = next(name, context);
    const ours = found.url.startsWith(project()) && !/\/node_modules\/|\?/.test(found.url);
    return ours ? { ...found, url: `${found.url}?${String(version)}` } : found;
  },
});

async function load(): Promise<readonly Test[]> {
  version += 1;
  const all: Test[] = [];
  for (const file of (process.env['TESTS'] ?? '').split(' '))
    all.push(
      ...(await testsOf(
        file,
        () => import(`${pathToFileURL(resolve(file)).href}?${String(version)}`),
      )),
    );
  if (all.length === 0) throw new Error('No tests.');
  const sweeps = process.env['SWEEPS'];
  return sweeps ? all.filter(({ name }) => !new RegExp(sweeps).test(name)) : all;
}

class Runner {
  private tests: readonly Test[] = [];
  private readonly times = new Map<string, number>();

  capabilities() {
    return { reloadEnvironment: true };
  }

  async dryRun() {
    switches.activeMutant = undefined;
    this.tests = await load();
    const tests = [];
    for (const { name, run } of this.tests) {
      switches.currentTestId = name;
      const start = performance.now();
      const failed = await failureOf(run);
      const timeSpentMs = performance.now() - start;
      this.times.set(name, timeSpentMs);
      const told = failed === undefined ? { status: 0 } : { status: 1, failureMessage: failed };
      tests.push({ id: name, name, timeSpentMs, ...told });
    }
    switches.currentTestId = undefined;
    return { status: 'complete', tests, mutantCoverage: switches.mutantCoverage };
  }

  async mutantRun({ activeMutant: { id }, testFilter, hitLimit, mutantActivation }: MutantRun) {
    const isStatic = mutantActivation === 'static';
    Object.assign(switches, { activeMutant: isStatic ? id : undefined, hitLimit, hitCount: 0 });
    try {
      if (this.tests.length === 0 && !isStatic) this.tests = await load();
      const tests = isStatic ? await load() : this.tests;
      switches.activeMutant = id;
      // No filter, or an empty one: all.
      const named = new Set(testFilter);
      const chosen = tests
        .filter(({ name }) => named.size === 0 || named.has(name))
        .toSorted((a, b) => (this.times.get(a.name) ?? 0) - (this.times.get(b.name) ?? 0));
      for (const [index, { name, run }] of chosen.entries()) {
        // A slip passed far more often than before any: Stryker's switch throws, so loops end.
        const failureMessage = await failureOf(run);
        if (failureMessage !== undefined)
          return { status: 'killed', killedBy: [name], failureMessage, nrOfTests: index + 1 };
      }
      return { status: 'survived', nrOfTests: chosen.length };
    } catch (error) {
      return { status: 'error', errorMessage: String(error) };
    } finally {
      switches.activeMutant = undefined;
    }
  }
}

async function failureOf(run: () => Promise<void>): Promise<string | undefined> {
  try {
    await run();
    return undefined;
  } catch (error) {
    return String(error);
  }
}

export const strykerPlugins = [{ kind: 'TestRunner', name: 'in-node', injectableClass: Runner }];
