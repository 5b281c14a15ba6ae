import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { releases as published } from '../../src/content/load.ts';
import { makeCodebooks } from '../../src/note/codebook.ts';
import { isOwn } from '../../src/guide/ids.ts';
import type { Codebooks } from '../../src/note/codebook.ts';
import { readCode } from '../../src/note/read.ts';
import type { Release } from '../../src/note/release.ts';
import type { Note } from '../../src/note/types.ts';
import { writeCode } from '../../src/note/write.ts';
import { workingRelease } from '../unit/note/codebooks.ts';
import { digestOf, hasVectors, makeVectors, releasePath, vectorPath } from './vectors.ts';
import type { VectorFile } from './vectors.ts';

const releases = published();
const codebooks = makeCodebooks(releases);

/** How many vectors no longer hold, with the first. */
function broken({ release, vectors }: VectorFile, codebooks: Codebooks): unknown[] {
  return vectors.filter(({ code, guide, answers, day, details, error }) => {
    const journey = answers.map(([at, answer]) => ({ at, answer }));
    const note = { release, guide, journey, day, details, error } as unknown as Note;
    const written = writeCode(note, codebooks);
    const reading = readCode(code, codebooks);
    expect(reading).toEqual({ kind: 'exact', code, note });
    return !written.ok || written.value !== code;
  });
}

/** Every answer of every guide's own nodes, as the vectors pass them. */
function answersIn(release: Release): number {
  const [codebook] = makeCodebooks([release]).values();
  const nodes = codebook?.guides.flatMap((guide) => [...guide.nodes.values()].filter(isOwn)) ?? [];
  return nodes.reduce((sum, { edges }) => sum + edges.length, 0);
}

test('vectors pass every answer, and would hold for the working guides', () => {
  const release = workingRelease();
  const file = makeVectors(release, '');
  const passed = file.vectors.flatMap(({ guide, answers }) =>
    answers.map(([at, answer]) => `${guide} ${at} ${answer}`),
  );
  expect(file.vectors.length).toBeGreaterThan(300);
  const own = passed.filter((answer) => !answer.includes('/'));
  expect(new Set(own).size).toBe(answersIn(release));
  const handsOver = release.guides.some(({ nodes }) =>
    nodes.some(({ answers }) => answers?.some(([, to]) => to.includes('/'))),
  );
  expect(passed.length > own.length).toBe(handsOver);
  expect(new Set(file.vectors.map(({ day }) => day)).size).toBe(32);
  expect(broken(file, makeCodebooks([release]))).toEqual([]);
});

test('a changed meaning breaks vectors', () => {
  const release = workingRelease();
  const file = makeVectors(release, '');
  const [first, ...others] = release.details;
  const fewer = { ...release, details: [...others, ...(first ? [first] : [])] };
  expect(() => broken(file, makeCodebooks([fewer]))).toThrow();
});

describe.each(releases.map((release) => [release.release, release] as const))(
  'release %i',
  (number, release) => {
    test('has vectors: node tests/vectors/make.ts', () => {
      expect(hasVectors(number)).toBe(true);
    });

    test('means what it meant', () => {
      const file = JSON.parse(readFileSync(vectorPath(number), 'utf8')) as VectorFile;
      expect(file.release).toBe(number);
      expect(file.vectors.length).toBeGreaterThanOrEqual(answersIn(release));
      expect(broken(file, codebooks)).toEqual([]);
    });

    test('has the bytes it was frozen with', () => {
      const file = JSON.parse(readFileSync(vectorPath(number), 'utf8')) as VectorFile;
      expect(digestOf(readFileSync(releasePath(number), 'utf8'))).toBe(file.digest);
    });
  },
);
