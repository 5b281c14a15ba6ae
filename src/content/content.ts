/**
 * The one reader of `content/`, for the site, the command line and the tests alike. A part is
 * read when it is first asked for, once a folder. Every part is its value or the problems that
 * keep it from being used; `gates.ts` asks for them all.
 */
import { isUtf8 } from 'node:buffer';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { z } from 'zod';
import { cutFor } from '../diagnosis/cut.ts';
import { loadModel } from '../diagnosis/load.ts';
import type { Model } from '../diagnosis/types.ts';
import { loadDetails } from '../guide/details.ts';
import type { Detail } from '../guide/details.ts';
import { loadBlocks } from '../guide/blocks.ts';
import type { Blocks } from '../guide/blocks.ts';
import { loadFlags } from '../guide/flags.ts';
import { loadGuides } from '../guide/load-guides.ts';
import type { GuideProblem } from '../guide/problem.ts';
import { switches } from '../guide/types.ts';
import type { Guide, Switch } from '../guide/types.ts';
import type { SourceFile } from '../guide/yaml.ts';
import { releaseSchema } from '../note/release-schema.ts';
import type { Release } from '../note/release.ts';
import { completed } from '../note/retired.ts';
import type { Retired } from '../note/retired.ts';
import { eachOnce, once } from '../once.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { glossarySchema } from '../text/glossary.ts';
import type { Glossary } from '../text/glossary.ts';
import type { StaffViews } from '../visit/staff-view.ts';
import { fileProblem, shapeProblems } from './problem.ts';
import type { Problem } from './problem.ts';
import { TOP, parseText, syntaxProblem } from './read.ts';
import type { Text } from './read.ts';
import { carePagesSchema, sourcesSchema } from './schema/care.ts';
import type { CarePage } from './schema/care.ts';
import { demoSchema } from './schema/demo.ts';
import type { Demo } from './schema/demo.ts';
import { finderSchema } from './schema/finder.ts';
import type { Finder } from './schema/finder.ts';
import { costsOf, firmSchema, switchedOff } from './schema/firm.ts';
import type { Firm } from './schema/firm.ts';
import { hazardsSchema } from './schema/hazards.ts';
import type { Hazard } from './schema/hazards.ts';
import { languagesSchema } from './schema/languages.ts';
import type { Language } from './schema/languages.ts';
import { recallSchema } from './schema/recall.ts';
import { regionsSchema } from './schema/regions.ts';
import type { Region } from './schema/regions.ts';
import type { RecallFile } from './schema/recall.ts';
import { retiredSchema } from './schema/retired.ts';
import { reviewsSchema } from './schema/reviews.ts';
import type { Review } from './schema/reviews.ts';
import { safetySchema, studySchema, wcagSchema } from './schema/safety.ts';
import type { Safety, Task, Wcag } from './schema/safety.ts';
import { staffViewSchema } from './schema/staff-view.ts';

/** Words with spaces between. */
const ownWordsSchema = z.record(
  z.string().regex(/^(?:all|panel|[a-z]{2})$/),
  z.string().transform((words): readonly string[] => words.trim().split(/\s+/)),
);

/** A part of content, or every problem that keeps it from being used. */
export type Checked<T> = Result<T, readonly Problem[]>;

/** The guides where some switches are off. */
export interface Copy {
  readonly off: readonly Switch[];
  readonly guides: Checked<readonly Guide[]>;
}

export interface Content {
  /** The folder, absolute. */
  readonly root: string;
  /** A file's name as problems tell it: from the working folder, or absolute where it is elsewhere. */
  readonly shown: (path: string) => string;
  /** A file by its path in the folder, parsed. */
  readonly text: (path: string) => Checked<Text>;
  readonly firm: () => Checked<Firm>;
  readonly languages: () => Checked<Readonly<Record<string, Language>>>;
  /** What changes from one region to the next, by the region's code. */
  readonly regions: () => Checked<Readonly<Record<string, Region>>>;
  /** The safety flags, in the order staff see them. */
  readonly flags: () => Checked<readonly string[]>;
  /** Pages that guides share, with the flags that all may raise. */
  readonly blocks: () => Checked<Blocks>;
  /** In the order of their folders' names, which is their order in a release. */
  readonly guides: () => Checked<readonly Guide[]>;
  /** The same with all that firms may switch off. */
  readonly wholeGuides: () => Checked<readonly Guide[]>;
  /** The guides with each set of switches off that changes something, the whole ones first. */
  readonly copies: () => readonly Copy[];
  /** In the order of the file, which is part of the note code. */
  readonly details: () => Checked<readonly Detail[]>;
  /** The evidence model of the whole range. */
  /** The figures of the evidence model as their files have them. */
  readonly modelFiles: () => Checked<readonly SourceFile[]>;
  readonly model: () => Checked<Model>;
  /** Guide → the cut of the model that its journeys need. */
  readonly models: () => Checked<Readonly<Record<string, Model>>>;
  /** Guide → how a technician sees it, for the guides that say so. */
  readonly staffViews: () => Checked<StaffViews>;
  readonly finder: () => Checked<Finder>;
  readonly carePages: () => Checked<readonly CarePage[]>;
  /** Short name → how the source is cited. */
  readonly sources: () => Checked<Readonly<Record<string, string>>>;
  /** The hazard log: a hazard's name → what it is, what controls it, and what shows that. */
  readonly hazards: () => Checked<Readonly<Record<string, Hazard>>>;
  readonly demos: () => Checked<readonly Demo[]>;
  /** Who signed which version of a guide, the newest last. */
  readonly reviews: () => Checked<readonly Review[]>;
  /** What the last runs found that the safety case tells of. */
  readonly safety: () => Checked<Safety>;
  /** What is met of WCAG 2.2, by the number of the criterion. */
  readonly wcag: () => Checked<Wcag>;
  /** The tasks of the study with people. */
  readonly study: () => Checked<readonly Task[]>;
  /** What the oldest releases did not freeze of their guides; nothing in a copy without such. */
  readonly retired: () => Checked<Retired>;
  /** What copies kept on devices must not show any more. */
  readonly recall: () => Checked<RecallFile>;
  /** All frozen releases, the oldest first: 1, 2, 3 … without a gap. */
  readonly releases: () => Checked<readonly Release[]>;
  /** Words that dictionaries lack, by language; `all` are names and signs of every language. */
  readonly ownWords: () => Checked<Readonly<Record<string, readonly string[]>>>;
  /** How the trade's terms are said; a language may have no glossary. */
  readonly glossary: (language: string) => Checked<Glossary>;
}

const opened = eachOnce(readerOf);
/** The content of a folder; what was read of it before is not read again. */
export const openContent = (folder: string): Content => opened(resolve(folder));

/** The values of parts together, or the problems of them all. */
export function all<T extends readonly unknown[]>(
  ...parts: { readonly [K in keyof T]: Checked<T[K]> }
): Checked<T> {
  const problems = parts.flatMap((part) => (part.ok ? [] : part.error));
  return problems.length > 0
    ? fail(problems)
    : ok(parts.map((part) => part.ok && part.value) as unknown as T);
}

/** Guides' and the model's own words for a slip of syntax become the file's. */
export function guideProblem({ file, place, ...trouble }: GuideProblem): Problem {
  return trouble.code === 'yaml-syntax'
    ? syntaxProblem(file, { ...trouble, place })
    : { file, place, about: 'guide', trouble };
}

function asContent<T>(loaded: Result<T, readonly GuideProblem[]>): Checked<T> {
  return loaded.ok ? loaded : fail(loaded.error.map(guideProblem));
}

function readerOf(root: string): Content {
  const shown = (path: string): string => {
    const near = relative(process.cwd(), join(root, path));
    return near.startsWith('..') ? join(root, path) : near;
  };
  const source = (path: string): Checked<SourceFile> => {
    const file = shown(path);
    try {
      const bytes = readFileSync(join(root, path));
      if (!isUtf8(bytes)) return fail([fileProblem({ file }, TOP, { code: 'not-utf8' })]);
      return ok({ source: bytes.toString('utf8').replace(/^\ufeff/, ''), file });
    } catch {
      return fail([fileProblem({ file }, TOP, { code: 'missing' })]);
    }
  };
  const text = eachOnce((path: string): Checked<Text> => {
    const read = source(path);
    return read.ok ? parseText(read.value.source, read.value.file) : read;
  });
  /** A file of the given shape. */
  const shaped = <T>(path: string, schema: z.ZodType<T>): Checked<T> => {
    const read = text(path);
    if (!read.ok) return read;
    const parsed = schema.safeParse(read.value.value);
    return parsed.success ? ok(parsed.data) : fail(shapeProblems(read.value, parsed.error.issues));
  };
  const file = <T>(path: string, schema: z.ZodType<T>) => once(() => shaped(path, schema));
  const has = (path: string): boolean => existsSync(join(root, path));

  const firm = file('firm.yaml', firmSchema);
  const flags = once((): Checked<readonly string[]> => {
    const list = source('flags.yaml');
    return list.ok ? asContent(loadFlags(list.value.source, list.value.file)) : list;
  });
  const blocks = once((): Checked<Blocks> => {
    const names = has('blocks') ? readdirSync(join(root, 'blocks')).toSorted() : [];
    const files = names.filter((name) => name.endsWith('.yaml'));
    const parts = all<[readonly string[], SourceFile[]]>(
      flags(),
      all<SourceFile[]>(...files.map((name) => source(`blocks/${name}`))),
    );
    if (!parts.ok) return parts;
    const [known, read] = parts.value;
    return asContent(loadBlocks(read, known));
  });
  /** The guides where these switches, their names in a row, are off. */
  const guidesWithout = eachOnce((off: string): Checked<readonly Guide[]> => {
    const folders = readdirSync(join(root, 'guides'), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name)
      .toSorted();
    const graphs = folders.map((name) => source(`guides/${name}/graph.yaml`));
    const parts = all<[Blocks, SourceFile[]]>(blocks(), all<SourceFile[]>(...graphs));
    if (!parts.ok) return parts;
    const [taken, files] = parts.value;
    const loaded = loadGuides(files, taken, new Set(off.split(' ')));
    const misnamed = (loaded.ok ? loaded.value : []).flatMap(({ id: guide }, index): Problem[] => {
      const [folder = '', file] = [
        folders[index],
        text(`guides/${folders[index] ?? ''}/graph.yaml`),
      ];
      if (String(guide) === folder || !file.ok) return [];
      return [
        fileProblem(file.value, file.value.valueAt(['id']), {
          code: 'guide-misnamed',
          guide,
          folder,
        }),
      ];
    });
    return misnamed.length > 0 ? fail(misnamed) : asContent(loaded);
  });
  const wholeGuides = () => guidesWithout('');
  const guides = (): Checked<readonly Guide[]> => {
    const told = firm();
    return guidesWithout(told.ok ? switchedOff(told.value).join(' ') : '');
  };
  const copies = once((): readonly Copy[] => {
    const whole = wholeGuides();
    const used = switches.filter(
      (name) => whole.ok && whole.value.some((guide) => guide.switches?.includes(name)),
    );
    const subsets = used.reduce<readonly (readonly Switch[])[]>(
      (sets, name) => [...sets, ...sets.map((set) => [...set, name])],
      [[]],
    );
    return subsets.map((off) => ({ off, guides: guidesWithout(off.join(' ')) }));
  });
  const details = once((): Checked<readonly Detail[]> => {
    const read = source('details.yaml');
    if (!read.ok) return read;
    return asContent(loadDetails(read.value.source, read.value.file));
  });
  /** Of each guide that has the file, what is in it; by guide. */
  const ofGuides = <T>(name: string, read: (path: string, guide: Guide) => Checked<T>) =>
    once((): Checked<Record<string, T>> => {
      // Files beside a graph speak of all its pages, whatever is switched off.
      const known = wholeGuides();
      if (!known.ok) return known;
      const own = known.value.filter(({ id }) => has(`guides/${id}/${name}`));
      const parts = all<T[]>(...own.map((guide) => read(`guides/${guide.id}/${name}`, guide)));
      if (!parts.ok) return parts;
      const values = parts.value;
      return ok(Object.fromEntries(own.map(({ id }, index) => [id, values[index] as T])));
    });
  const modelFiles = once((): Checked<readonly SourceFile[]> => {
    const names = has('model') ? readdirSync(join(root, 'model')).toSorted() : [];
    const own = names.filter((name) => name.endsWith('.yaml')).map((name) => `model/${name}`);
    // Without a file the first is the one that is missed.
    return all<SourceFile[]>(...(own.length > 0 ? own : ['model/faults.yaml']).map(source));
  });
  const model = once((): Checked<Model> => {
    const parts = all<[readonly Guide[], readonly Detail[], readonly SourceFile[]]>(
      wholeGuides(),
      details(),
      modelFiles(),
    );
    if (!parts.ok) return parts;
    const [known, told, files] = parts.value;
    const payer = firm();
    const loaded = loadModel(
      files,
      { guides: known, details: told },
      payer.ok ? costsOf(payer.value) : undefined,
    );
    if (loaded.ok) return loaded;
    return fail(
      loaded.error.map(({ file: of, place, ...trouble }): Problem => {
        const { yaml, first } = trouble.facts;
        if (trouble.code !== 'not-yaml') return { file: of, place, about: 'model', trouble };
        const before = typeof first === 'number' ? { first: { line: first, column: 1 } } : {};
        return syntaxProblem(of, { reason: String(yaml), place, ...before });
      }),
    );
  });
  const models = once((): Checked<Readonly<Record<string, Model>>> => {
    const parts = all<[Model, readonly Guide[]]>(model(), wholeGuides());
    if (!parts.ok) return parts;
    const [known, list] = parts.value;
    return ok(Object.fromEntries(list.map((guide) => [guide.id, cutFor(known, guide)])));
  });
  const retired = once((): Checked<Retired> =>
    has('retired.json') ? shaped('retired.json', retiredSchema) : ok({}),
  );
  const releases = once((): Checked<readonly Release[]> => {
    const names = has('releases') ? readdirSync(join(root, 'releases')) : [];
    const found = names.filter((name) => name.endsWith('.json'));
    const read = all<Release[]>(
      ...found.map((name): Checked<Release> => {
        const path = `releases/${name}`;
        const release = shaped(path, releaseSchema);
        if (!release.ok || name === `${String(release.value.release)}.json`) return release;
        const trouble = { code: 'release-misnamed', release: release.value.release } as const;
        return fail([fileProblem({ file: shown(path) }, TOP, trouble)]);
      }),
    );
    const parts = all<[readonly Release[], Retired]>(read, retired());
    if (!parts.ok) return parts;
    const [list, old] = parts.value;
    const sorted = list
      .map((release) => completed(release, old))
      .toSorted((a, b) => a.release - b.release);
    const gap = sorted.findIndex(({ release }, index) => release !== index + 1);
    const missing = { code: 'release-missing', release: gap + 1 } as const;
    return gap < 0 ? ok(sorted) : fail([fileProblem({ file: shown('releases') }, TOP, missing)]);
  });

  return {
    root,
    shown,
    text,
    firm,
    languages: file('languages.yaml', languagesSchema),
    regions: file('regions.yaml', regionsSchema),
    flags,
    blocks,
    guides,
    wholeGuides,
    copies,
    details,
    modelFiles,
    model,
    models,
    staffViews: ofGuides('preview.yaml', (path, guide) => shaped(path, staffViewSchema(guide))),
    finder: file('finder.yaml', finderSchema),
    carePages: file('care.yaml', carePagesSchema),
    sources: file('sources.json', sourcesSchema),
    hazards: file('hazards.yaml', hazardsSchema),
    demos: file('demo.json', demoSchema),
    reviews: file('reviews.yaml', reviewsSchema),
    safety: file('safety.json', safetySchema),
    wcag: file('wcag.yaml', wcagSchema),
    study: file('study.yaml', studySchema),
    retired,
    recall: file('recall.json', recallSchema),
    releases,
    ownWords: file('spelling.yaml', ownWordsSchema),
    glossary: eachOnce((language) => {
      const path = `glossaries/${language}.json`;
      return has(path) ? shaped(path, glossarySchema) : ok({});
    }),
  };
}
