/** What tests import as `vitest` when slips are tried on them: the same words, run by `runner.ts`. */
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const own = createRequire(import.meta.url);
const load = async <T>(name: string): Promise<T> =>
  (await import(pathToFileURL(own.resolve(name)).href)) as T;
const {
  use,
  assert,
  expect: made,
} = await load<{
  use: (part: unknown) => void;
  assert: { fail: (why?: string) => never };
  expect: object;
}>('chai');
const parts = await load<Readonly<Record<string, unknown>>>('@vitest/expect');
for (const part of ['JestExtend', 'JestChaiExpect', 'JestAsymmetricMatchers']) use(parts[part]);
export const expect = Object.assign(made, { unreachable: assert.fail });

type Act = (...row: readonly unknown[]) => unknown;
interface Suite {
  readonly path: string;
  readonly before: Act[];
  readonly after: Act[];
  readonly outer?: Suite;
}
export interface Test {
  readonly name: string;
  readonly run: () => Promise<void>;
}

let suite: Suite = { path: '', before: [], after: [] };
let collected: Test[] = [];

/** The tests of one file, by loading it. */
export async function testsOf(file: string, loaded: () => Promise<unknown>): Promise<Test[]> {
  [suite, collected] = [{ path: file, before: [], after: [] }, []];
  await loaded();
  return collected;
}

const outward = (from: Suite): readonly Suite[] =>
  from.outer ? [from, ...outward(from.outer)] : [from];

function add(title: string, act: Act): void {
  const suites = outward(suite);
  const name = `${suite.path} > ${title} #${String(collected.length)}`;
  const run = async (): Promise<void> => {
    try {
      for (const { before } of suites.toReversed()) for (const one of before) await one();
      await act();
    } finally {
      for (const { after } of suites) for (const one of after) await one();
    }
  };
  collected.push({ name, run });
}

function within(title: string, act: Act): void {
  const outer = suite;
  suite = { path: `${outer.path} > ${title}`, before: [], after: [], outer };
  act();
  suite = outer;
}

const spread = (row: unknown): readonly unknown[] => (Array.isArray(row) ? row : [row]);
const named = (one: typeof add) =>
  Object.assign(one, {
    each: (rows: readonly unknown[]) => (title: string, act: Act) => {
      for (const row of rows) one(title, () => act(...spread(row)));
    },
    skipIf: (skip: boolean) => (title: string, act: Act) => {
      if (!skip) one(title, act);
    },
  });

export const it = named(add);
export const test = it;
export const describe = named(within);
export const beforeEach = (act: Act): number => suite.before.push(act);
export const afterEach = (act: Act): number => suite.after.push(act);
