/** The guides, details and releases of this copy, from its files. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadDetails } from '../guide/details.ts';
import type { Detail } from '../guide/details.ts';
import { marksOf } from '../guide/marks.ts';
import { loadGuides } from '../guide/load-guides.ts';
import type { SourceFile } from '../guide/load-guides.ts';
import type { GuideProblem } from '../guide/problem.ts';
import type { Guide } from '../guide/types.ts';
import { freeze } from '../note/freeze.ts';
import { makeLibrary } from '../note/library.ts';
import type { Library } from '../note/library.ts';
import { releaseSchema } from '../note/release-schema.ts';
import type { Release } from '../note/release.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
/** Where releases are kept, seen from the top folder. */
export const releasesFolder = 'content/releases';

/** Absolute path of a file named from the top folder. */
export function inRoot(path: string): string {
  return `${root}${path}`;
}

/** A file this copy's notes depend on that cannot be used, and why. */
export type BookProblem =
  | GuideProblem
  | {
      readonly code: 'release-broken';
      readonly file: string;
      readonly path: string;
      readonly reason: string;
    }
  | { readonly code: 'release-misnamed'; readonly file: string; readonly release: number }
  | { readonly code: 'release-missing'; readonly release: number };

export interface Working {
  /** In the order of their names, which is their order in a release. */
  readonly guides: readonly Guide[];
  readonly details: readonly Detail[];
}

/** The danger pages that guides share, seen from the top folder. */
export const sharedFile = 'content/guides/shared.yaml';

/** The safety flags, seen from the top folder. */
export const flagsFile = 'content/flags.yaml';

function sourceFile(file: string): SourceFile {
  return { source: readFileSync(inRoot(file), 'utf8'), file };
}

/** The graph files of every guide, seen from the top folder, in the order of their names. */
export function guideFiles(): string[] {
  return readdirSync(inRoot('content/guides'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => `content/guides/${name}/graph.yaml`)
    .toSorted();
}

/** The guides and details as they are now. */
export function loadWorking(): Result<Working, readonly BookProblem[]> {
  const guides = loadGuides(
    guideFiles().map(sourceFile),
    sourceFile(sharedFile),
    sourceFile(flagsFile),
  );
  const { source, file } = sourceFile('content/details.yaml');
  const details = loadDetails(source, file);
  if (!guides.ok || !details.ok)
    return fail([...(guides.ok ? [] : guides.error), ...(details.ok ? [] : details.error)]);
  return ok({ guides: guides.value, details: details.value });
}

/** All frozen releases, the oldest first: 1, 2, 3 … without a gap. */
export function loadReleases(): Result<readonly Release[], readonly BookProblem[]> {
  const folder = inRoot(releasesFolder);
  const names = existsSync(folder) ? readdirSync(folder).filter((n) => n.endsWith('.json')) : [];
  const releases: Release[] = [];
  const problems: BookProblem[] = [];
  for (const name of names) {
    const file = `${releasesFolder}/${name}`;
    const release = parseRelease(readFileSync(inRoot(file), 'utf8'), file);
    if (!release.ok) problems.push(...release.error);
    else if (name === `${release.value.release}.json`) releases.push(release.value);
    else problems.push({ code: 'release-misnamed', file, release: release.value.release });
  }
  const sorted = releases.toSorted((a, b) => a.release - b.release);
  const gap = sorted.findIndex(({ release }, i) => release !== i + 1);
  if (problems.length === 0 && gap >= 0) {
    problems.push({ code: 'release-missing', release: gap + 1 });
  }
  return problems.length > 0 ? fail(problems) : ok(sorted);
}

/** One release of the text of its file; `file` is only copied into the problems. */
export function parseRelease(
  source: string,
  file: string,
): Result<Release, readonly BookProblem[]> {
  let value: unknown;
  try {
    value = JSON.parse(source);
  } catch {
    return fail([{ code: 'release-broken', file, path: '', reason: 'bad-json' }]);
  }
  const parsed = releaseSchema.safeParse(value);
  if (parsed.success) return ok(parsed.data);
  return fail(
    parsed.error.issues.map(({ path, code, message }) => ({
      code: 'release-broken',
      file,
      path: path.join('.'),
      reason: code === 'custom' ? message : code,
    })),
  );
}

/** Books to read and write notes with. */
export interface Books {
  readonly library: Library;
  readonly newest: number;
  /** Nothing is frozen yet: the one book is the working guides' and may still change. */
  readonly draft: boolean;
}

/** The books of all releases; of a copy that has none yet, the book its first one would be. */
export function loadBooks(today: Date): Result<Books, readonly BookProblem[]> {
  const releases = loadReleases();
  if (!releases.ok) return releases;
  const working = loadWorking();
  if (!working.ok) return working;
  const { guides, details } = working.value;
  const marks = marksOf(guides);
  const newest = releases.value.at(-1);
  if (newest)
    return ok({
      library: makeLibrary(releases.value, marks),
      newest: newest.release,
      draft: false,
    });
  const draft = freeze(guides, details, 1, today.toISOString().slice(0, 10));
  return ok({ library: makeLibrary([draft], marks), newest: 1, draft: true });
}
