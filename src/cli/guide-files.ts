/** Guides and their English sentences from the files of this copy, for the proof. */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { loadFlags } from '../guide/flags.ts';
import { guidesOf } from '../guide/ids.ts';
import { joinGuides } from '../guide/join.ts';
import type { Part } from '../guide/join.ts';
import { loadPart, loadShared } from '../guide/load.ts';
import type { GuideProblem } from '../guide/problem.ts';
import type { GuideSentences } from '../proof/sentences.ts';
import type { Guide, GuideId } from '../guide/types.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { joinedText } from '../content/shared-text.ts';
import { flagsFile, guideFiles, inRoot, sharedFile } from './books.ts';

/** A file of sentences that cannot be used. */
export type TextProblem =
  | { readonly code: 'file-unreadable'; readonly file: string }
  | { readonly code: 'not-json'; readonly file: string; readonly reason: string }
  | { readonly code: 'text-shape'; readonly file: string; readonly path: string };

/** What the proof reads of a page's sentences; the whole shape is the text's own schema. */
const line = z.string().optional();
const lines = z.array(z.string()).optional();
const labels = z.record(z.string(), z.string()).optional();
const sentencesSchema = z.record(
  z.string(),
  z.looseObject({
    ...{ short: line, title: line, why: line, callNote: line },
    ...{ help: lines, lines, now: lines, never: lines, care: lines },
    ...{ answers: labels, hints: labels },
  }),
);

function readText(file: string): Result<string, TextProblem> {
  try {
    return ok(readFileSync(file, 'utf8'));
  } catch {
    return fail({ code: 'file-unreadable', file });
  }
}

type FileProblems = readonly (GuideProblem | TextProblem)[];

/** One guide's file by itself; `shown` is the file's name in problems. */
function readPart(file: string, shown: string): Result<Part, FileProblems> {
  const source = readText(file);
  if (!source.ok) return fail([{ ...source.error, file: shown }]);
  const sharedText = readText(inRoot(sharedFile));
  if (!sharedText.ok) return fail([{ ...sharedText.error, file: sharedFile }]);
  const flagsText = readText(inRoot(flagsFile));
  if (!flagsText.ok) return fail([{ ...flagsText.error, file: flagsFile }]);
  const flags = loadFlags(flagsText.value, flagsFile);
  if (!flags.ok) return flags;
  const shared = loadShared(sharedText.value, sharedFile, flags.value);
  return shared.ok ? loadPart(source.value, shown, shared.value) : shared;
}

let parts: readonly Result<Part, FileProblems>[] | undefined;

/** Every published guide by itself, read once: each guide that hands over needs them all. */
function publishedParts(): readonly Result<Part, FileProblems>[] {
  parts ??= guideFiles().map((path) => readPart(inRoot(path), path));
  return parts;
}

/**
 * A guide from its file, joined with the published ones it hands over to; `shown` is the
 * file's name in problems.
 */
export function readGuide(file: string, shown: string): Result<Guide, FileProblems> {
  const part = readPart(file, shown);
  if (!part.ok) return part;
  const { guide, handOvers } = part.value;
  // Most guides hand over to none; a broken other file is then none of this one's business.
  const others = handOvers.length === 0 ? [] : publishedParts();
  const problems = others.flatMap((other) => (other.ok ? [] : other.error));
  if (problems.length > 0) return fail(problems);
  const rest = others.flatMap((other) =>
    other.ok && other.value.guide.id !== guide.id ? [other.value] : [],
  );
  const joined = joinGuides([part.value, ...rest]);
  return joined.ok ? ok(joined.value[0] ?? guide) : joined;
}

/** The English sentences of a guide's pages, and of those it hands over to. */
export function readSentences(guide: Guide): Result<GuideSentences, readonly TextProblem[]> {
  const shared = readSentenceFile('content/text/en/shared.json');
  const names = [guide.id, ...guidesOf(guide)];
  const texts = names.map((name) => readSentenceFile(`content/text/en/${name}.json`));
  const problems = [shared, ...texts].flatMap((text) => (text.ok ? [] : text.error));
  if (!shared.ok || problems.length > 0) return fail(problems);
  const own = new Map(names.map((name, i) => [name, texts[i]?.ok ? texts[i].value : {}]));
  return ok(joinedText(guide, shared.value, (name) => own.get(name as GuideId) ?? {}));
}

function readSentenceFile(file: string): Result<GuideSentences, readonly TextProblem[]> {
  const source = readText(inRoot(file));
  if (!source.ok) return fail([{ ...source.error, file }]);
  let value: unknown;
  try {
    value = JSON.parse(source.value);
  } catch (error) {
    return fail([{ code: 'not-json', file, reason: error instanceof Error ? error.message : '' }]);
  }
  const sentences = sentencesSchema.safeParse(value);
  if (sentences.success) return ok(sentences.data);
  return fail(
    sentences.error.issues.map(({ path }) => ({ code: 'text-shape', file, path: path.join('.') })),
  );
}
