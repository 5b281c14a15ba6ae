/**
 * Everything under `content/`, read once at build time. Whatever is wrong there ends
 * the build with every problem named: file, place and what is expected.
 */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { loadModel } from '../diagnosis/load.ts';
import type { StaffView, StaffViews } from '../visit/staff-view.ts';
import type { Model } from '../diagnosis/types.ts';
import { loadDetails } from '../guide/details.ts';
import type { Detail } from '../guide/details.ts';
import { ownNodes } from '../guide/ids.ts';
import { loadGuides } from '../guide/load-guides.ts';
import type { SourceFile } from '../guide/load-guides.ts';
import type { Guide } from '../guide/types.ts';
import type { Result } from '../result.ts';
import { carePagesSchema, sourcesSchema } from './schema/care.ts';
import type { CarePage } from './schema/care.ts';
import { staffViewSchema } from './schema/staff-view.ts';
import { finderSchema } from './schema/finder.ts';
import type { Finder } from './schema/finder.ts';
import { firmSchema } from './schema/firm.ts';
import type { Firm } from './schema/firm.ts';
import { demoSchema } from './schema/demo.ts';
import type { Demo } from './schema/demo.ts';
import { guideTextSchema } from './schema/guide-text.ts';
import { joinedText } from './shared-text.ts';

const root = join(process.cwd(), 'content');

function read(path: string): string {
  return readFileSync(join(root, path), 'utf8');
}

/** A file under `content/`; undefined where it cannot be read. */
export function fileIn(path: string): string | undefined {
  try {
    return read(path);
  } catch {
    return undefined;
  }
}

/** A YAML file under `content/` as it stands, unchecked. */
export function yamlFile(path: string): unknown {
  return parse(read(path));
}

/** A build cannot go on with broken content: the one place where data becomes an exception. */
function need<T>(result: Result<T, unknown>, path: string): T {
  if (result.ok) return result.value;
  throw new Error(
    `content/${path} is broken. Run "npm run prove" for the places and hints.\n${JSON.stringify(result.error, undefined, 2)}`,
  );
}

/** A value of the given shape; anything else ends the build. `path` is under `content/`. */
export function checked<T>(schema: z.ZodType<T>, value: unknown, path: string): T {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  throw new Error(`content/${path} is broken:\n${z.prettifyError(parsed.error)}`);
}

function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}

/** The firm of `content/firm.yaml`. */
export const firm = once((): Firm => checked(firmSchema, parse(read('firm.yaml')), 'firm.yaml'));

function guideNames(): string[] {
  return readdirSync(join(root, 'guides'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .toSorted();
}

function named(path: string): SourceFile {
  return { source: read(path), file: `content/${path}` };
}

/** All guides, in the order of their folder names. */
export const guides = once((): readonly Guide[] =>
  need(
    loadGuides(
      guideNames().map((name) => named(`guides/${name}/graph.yaml`)),
      named('guides/shared.yaml'),
      named('flags.yaml'),
    ),
    'guides',
  ),
);

/** The optional details of `content/details.yaml`, in the order of the note code. */
export const details = once((): readonly Detail[] =>
  need(loadDetails(read('details.yaml'), 'details.yaml'), 'details.yaml'),
);

/** Guide → its diagnosis model, for the guides that have one. */
export const models = once((): Readonly<Record<string, Model>> =>
  Object.fromEntries(
    guides().flatMap((guide) => {
      const path = `guides/${guide.id}/faults.yaml`;
      if (!existsSync(join(root, path))) return [];
      const context = { guide, details: details() };
      return [[guide.id, need(loadModel(read(path), path, context), path)]];
    }),
  ),
);

/** Guide → how a technician sees it, for the guides that say so. */
export const staffViews = once((): StaffViews =>
  Object.fromEntries(
    guides().flatMap((guide) => {
      const path = `guides/${guide.id}/preview.yaml`;
      if (!existsSync(join(root, path))) return [];
      return [[guide.id, checked<StaffView>(staffViewSchema(guide), parse(read(path)), path)]];
    }),
  ),
);

/** What owners say and which guide it leads to, of `content/finder.yaml`. */
export const finder = once((): Finder =>
  checked(finderSchema, parse(read('finder.yaml')), 'finder.yaml'),
);

/** The care pages of `content/care.yaml`, in the order shown. */
export const carePages = once((): readonly CarePage[] =>
  checked(carePagesSchema, parse(read('care.yaml')), 'care.yaml'),
);

/** The published sources of `content/sources.json`: short name → how it is cited. */
export const sources = once((): Readonly<Record<string, string>> =>
  checked(sourcesSchema, JSON.parse(read('sources.json')), 'sources.json'),
);

/** The made-up visits of `content/demo.json`. */
export const demos = once((): readonly Demo[] =>
  checked(demoSchema, JSON.parse(read('demo.json')), 'demo.json'),
);

/** One text file of a language as it stands, unchecked. */
export function textFile(language: string, name: string): unknown {
  return JSON.parse(read(`text/${language}/${name}.json`));
}

/** The sentences of a guide in a language, every one of them there, the shared ones too. */
export function guideTextFile(language: string, guide: Guide): Record<string, unknown> {
  const read = (name: string) => textFile(language, name) as Record<string, unknown>;
  const own = { ...guide, nodes: new Map(ownNodes(guide).map((node) => [node.id, node])) };
  return checked(
    guideTextSchema(guide),
    joinedText(own, read('shared'), read),
    `text/${language}/${guide.id}.json`,
  );
}
