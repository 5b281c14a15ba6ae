/** Guides made up in any number and size, in their authors' form, and a site built of them. */
import { spawn } from 'node:child_process';
import { cp, mkdir, mkdtemp, readFile, readdir, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse, stringify } from 'yaml';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** A journey takes at most 25 answers; the danger question and the hall are two of them. */
const MOST_LAYERS = 20;

export interface MadeUp {
  readonly id: string;
  readonly graph: string;
  /** Its English sentences. */
  readonly text: Record<string, object>;
}

const question = (answers: Record<string, string>) => ({
  node: {
    kind: 'question',
    drawing: 'oven',
    answers: Object.fromEntries(Object.entries(answers).map(([answer, to]) => [answer, { to }])),
  },
  text: {
    short: 'What is seen there',
    title: 'What do you see there now?',
    help: ['Look from where you stand. Take your time.'],
    why: 'It tells us which way to go on.',
    answers: Object.fromEntries(
      Object.keys(answers).map((answer) => [answer, `It is like this: ${answer}`]),
    ),
  },
});

/**
 * A guide of about `size` pages besides the danger pages: layers of questions, each leading to
 * pages around three times its own place in the next layer.
 * @param next a guide to hand over to at its page `hall`
 * @param layers questions one after the other, after the danger question and the hall
 */
export function madeUp(id: string, size: number, next?: string, layers = MOST_LAYERS): MadeUp {
  const width = Math.max(2, Math.round((size - 2) / layers));
  const name = (layer: number, place: number): string =>
    layer === layers ? 'end' : `page-${layer}-${place % width}`;
  const wide = Array.from({ length: width }, (_, i) => [`way-${i}`, name(0, i)] as const);
  const made: Record<string, ReturnType<typeof question>> = {
    hall: question({
      ...Object.fromEntries(wide),
      ...(next === undefined ? {} : { other: `${next}/hall` }),
      unsure: name(0, 0),
    }),
  };
  for (let layer = 0; layer < layers; layer += 1)
    for (let place = 0; place < width; place += 1)
      made[name(layer, place)] = question({
        one: name(layer + 1, 3 * place),
        two: name(layer + 1, 3 * place + 1),
        unsure: name(layer + 1, place),
      });
  const end = { kind: 'finish', urgency: 'none', drawing: 'finish' };
  const nodes = Object.entries(made).map(([key, { node }]) => [key, node] as const);
  return {
    id,
    graph: stringify({
      id,
      tracks: ['only'],
      start: 'danger',
      blocks: { danger: { none: 'hall' } },
      entries: ['hall'],
      nodes: { ...Object.fromEntries(nodes), end },
    }),
    text: {
      ...Object.fromEntries(Object.entries(made).map(([key, { text }]) => [key, text])),
      end: {
        short: 'All is well',
        title: 'All is well now',
        lines: ['You can use the oven.'],
        never: ['Do not hurry.'],
      },
    },
  };
}

function run(command: string, words: readonly string[], cwd: string): Promise<void> {
  return new Promise((done, failed) => {
    const child = spawn(command, words, {
      cwd,
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' },
    });
    child.once('error', failed);
    child.once('close', (code) => {
      if (code === 0) done();
      else failed(new Error(`${command} ended with ${String(code)}`));
    });
  });
}

/** Where a site of made-up guides was built, beside the published ones, and how long it took. */
export interface BuiltSite {
  readonly dist: string;
  readonly seconds: number;
  readonly remove: () => Promise<void>;
}

/** All strings in a value. */
function stringsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(stringsOf) : [];
}

/** Gives the copy in `folder` English alone, and more languages that are English word for word. */
async function speak(folder: string, more: readonly string[]): Promise<void> {
  const content = join(folder, 'content');
  const english = join(content, 'text/en');
  const same = new Set<string>();
  for (const name of await readdir(english)) {
    const text = await readFile(join(english, name), 'utf8');
    for (const line of stringsOf(JSON.parse(text))) same.add(line);
  }
  const as = { name: 'Made up', direction: 'ltr', staff: true, same: [...same] };
  const known = parse(await readFile(join(content, 'languages.yaml'), 'utf8')) as object;
  const languages = { ...known, ...Object.fromEntries(more.map((language) => [language, as])) };
  await writeFile(
    join(content, 'languages.yaml'),
    stringify(languages, { aliasDuplicateObjects: false }),
  );
  const firm = parse(await readFile(join(content, 'firm.yaml'), 'utf8')) as object;
  const told = { area: 'everywhere', 'after-hours': 'later', languages: ['en', ...more] };
  await writeFile(join(content, 'firm.yaml'), stringify({ ...firm, ...told }));
  for (const language of more)
    await cp(english, join(content, 'text', language), { recursive: true });
}

/**
 * Build a copy of this project with more guides in it.
 *
 * @param languages those made up beside English: two letters that no language has, `xa`
 */
export async function buildWith(
  guides: readonly MadeUp[],
  languages: readonly string[] = [],
): Promise<BuiltSite> {
  const folder = await mkdtemp(join(tmpdir(), 'hobnote-guides-'));
  for (const name of ['.config', 'content', 'public', 'src'])
    await cp(join(ROOT, name), join(folder, name), { recursive: true });
  for (const name of ['package.json', 'tsconfig.json', 'astro.config.mjs', 'package-lock.json'])
    await cp(join(ROOT, name), join(folder, name));
  // The hazard log is held to the tests that it names.
  for (const name of ['node_modules', 'tests']) await symlink(join(ROOT, name), join(folder, name));
  const texts = join(folder, 'content/text/en');
  const names = JSON.parse(await readFile(join(texts, 'guides.json'), 'utf8')) as {
    names: Record<string, string>;
  };
  for (const { id, graph, text } of guides) {
    await mkdir(join(folder, 'content/guides', id));
    await writeFile(join(folder, 'content/guides', id, 'graph.yaml'), graph);
    await writeFile(join(texts, `${id}.json`), JSON.stringify(text));
    names.names[id] = `Made-up guide ${id}`;
  }
  await writeFile(join(texts, 'guides.json'), JSON.stringify(names));
  await speak(folder, languages);
  const from = performance.now();
  await run('astro', ['build'], folder);
  return {
    dist: join(folder, 'dist'),
    seconds: (performance.now() - from) / 1000,
    remove: () => rm(folder, { recursive: true }),
  };
}
