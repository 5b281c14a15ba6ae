import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { inRoot } from '../../src/cli/root.ts';
import { isOwn } from '../../src/guide/ids.ts';
import type { Given, Journey } from '../../src/guide/types.ts';
import { makeCodebooks } from '../../src/note/codebook.ts';
import type { Codebook, CodebookGuide, CodebookNode, Codebooks } from '../../src/note/codebook.ts';
import type { Release } from '../../src/note/release.ts';
import { sampleJourneys } from '../../src/note/sample.ts';
import type { Note } from '../../src/note/types.ts';
import { unrank } from '../../src/note/edges.ts';
import { writeCode } from '../../src/note/write.ts';

/** A code and its note, the journey as pairs of node and answer. */
export interface Vector {
  readonly code: string;
  readonly guide: string;
  readonly answers: readonly (readonly [at: string, answer: string])[];
  readonly day: number;
  readonly details: Readonly<Record<string, string>>;
  readonly error: string;
}

export interface VectorFile {
  readonly release: number;
  /** SHA-256 of the release's file, hexadecimal. */
  readonly digest: string;
  readonly seed: number;
  readonly vectors: readonly Vector[];
}

const seed = 20_261_125;
const samples = 100;

export function vectorPath(release: number): string {
  return inRoot(`tests/vectors/note-${release}.json`);
}

export function releasePath(release: number): string {
  return inRoot(`content/releases/${release}.json`);
}

export function digestOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

export function hasVectors(release: number): boolean {
  return existsSync(vectorPath(release));
}

/** The vectors of a release; `text` is its file's. */
export function makeVectors(release: Release, text: string): VectorFile {
  const codebooks = makeCodebooks([release]);
  const [codebook] = codebooks.values();
  if (!codebook) throw new Error('no book');
  const vectors = codebook.guides.flatMap((guide) =>
    journeysOf(guide).map((journey, i) => vectorOf(noteOf(codebook, guide, journey, i), codebooks)),
  );
  return { release: release.release, digest: digestOf(text), seed, vectors };
}

function journeysOf(guide: CodebookGuide): Journey[] {
  const found: Journey[] = [[]];
  const seen = new Set<CodebookNode>();
  const go = (node: CodebookNode, journey: readonly Given[]): void => {
    // What follows a hand-over is passed in the other guide's own vectors, and by the samples.
    if (seen.has(node) || !isOwn(node)) return;
    seen.add(node);
    for (const { answer, to } of node.edges) {
      const further = [...journey, { at: node.id, answer }];
      found.push(further);
      go(to, further);
    }
  };
  go(guide.first, []);
  const last = unrank(guide, guide.first.journeys - 1n);
  return [...found, ...(last ? [last] : []), ...sampleJourneys(guide, samples, seed)];
}

/** Details and texts in turn; 5 and 32 have no common factor, so every day meets every kind. */
function noteOf(codebook: Codebook, { id: guide }: CodebookGuide, journey: Journey, i: number): Note {
  const kind = i % 5;
  const all = codebook.details.map(
    ({ id, answers }) => [id, answers[i % answers.length] ?? ''] as const,
  );
  const some = all.filter((_, k) => (i >> (k % 8)) % 2 === 1);
  const details = Object.fromEntries(kind === 1 || kind === 3 ? all : kind === 4 ? some : []);
  const error = kind === 2 || kind === 3 ? 'F9 E1' : kind === 4 ? 'Err: door "LOC" 180°' : '';
  return { release: codebook.release, guide, journey, day: i % 32, details, error };
}

function vectorOf(note: Note, codebooks: Codebooks): Vector {
  const code = writeCode(note, codebooks);
  if (!code.ok) throw new Error(JSON.stringify(code.error));
  const { guide, journey, day, details, error } = note;
  const answers = journey.map(({ at, answer }) => [at, answer] as const);
  return { code: code.value, guide, answers, day, details, error };
}
