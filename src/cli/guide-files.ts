/** Guides and their English sentences from the files of this copy, for the proof. */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { loadGuide, loadShared } from '../guide/load.ts';
import type { GuideProblem } from '../guide/problem.ts';
import type { GuideSentences } from '../guide/prove/sentences.ts';
import type { Guide } from '../guide/types.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { withSharedText } from '../text/shared-text.ts';
import { inRoot, sharedFile } from './books.ts';

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

/** A guide from its file; `shown` is the file's name in problems. */
export function readGuide(
  file: string,
  shown: string,
): Result<Guide, readonly (GuideProblem | TextProblem)[]> {
  const source = readText(file);
  if (!source.ok) return fail([{ ...source.error, file: shown }]);
  const sharedText = readText(inRoot(sharedFile));
  if (!sharedText.ok) return fail([{ ...sharedText.error, file: sharedFile }]);
  const shared = loadShared(sharedText.value, sharedFile);
  return shared.ok ? loadGuide(source.value, shown, shared.value) : shared;
}

/** A guide's English sentences, those of the shared danger pages too. */
export function readSentences(guide: Guide): Result<GuideSentences, readonly TextProblem[]> {
  const shared = readSentenceFile('content/text/en/shared.json');
  if (!shared.ok) return shared;
  const own = readSentenceFile(`content/text/en/${guide.id}.json`);
  return own.ok ? ok(withSharedText(guide, shared.value, own.value)) : own;
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
