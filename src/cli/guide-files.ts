/** Guides and their English sentences from the files of this copy, for the proof. */
import { readdirSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { loadGuide } from '../guide/load.ts';
import type { GuideProblem } from '../guide/problem.ts';
import type { GuideSentences } from '../guide/prove/sentences.ts';
import type { Guide } from '../guide/types.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { inRoot } from './books.ts';

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

/** The graph files of every guide, from the top folder, in the order of their names. */
export function guideFiles(): string[] {
  return readdirSync(inRoot('content/guides'))
    .toSorted()
    .map((name) => inRoot(`content/guides/${name}/graph.yaml`));
}

function readText(file: string): Result<string, TextProblem> {
  try {
    return ok(readFileSync(file, 'utf8'));
  } catch {
    return fail({ code: 'file-unreadable', file });
  }
}

/** A guide from its file; `shown` is the file's name in problems. */
export function readGuide(
  file: string,
  shown: string,
): Result<Guide, readonly (GuideProblem | TextProblem)[]> {
  const source = readText(file);
  return source.ok ? loadGuide(source.value, shown) : fail([{ ...source.error, file: shown }]);
}

/** A guide's English sentences. */
export function readSentences(guide: Guide): Result<GuideSentences, readonly TextProblem[]> {
  const file = `content/text/en/${guide.id}.json`;
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
