import { brotliCompressSync, constants } from 'node:zlib';
import { readFileSync } from 'node:fs';
import { inRoot } from '../../src/cli/root.ts';
import { releases } from '../../src/content/load.ts';
import { protect } from '../../src/note/blocks.ts';
import { codebookGuide, makeCodebooks } from '../../src/note/codebook.ts';
import { readCode } from '../../src/note/read.ts';
import { repair } from '../../src/note/repair.ts';
import { sampleJourneys } from '../../src/note/sample.ts';
import type { Note } from '../../src/note/types.ts';
import { writeCode } from '../../src/note/write.ts';
import { makeRandom, spoil } from '../unit/note/random.ts';
import type { Row } from './row.ts';

const SAMPLE = 2000;
/** Long enough for the compiler to have settled. */
const SECONDS = 1;

/**
 * Calls a second of processor time, items taken in turn, after one round to warm up. Not
 * by the clock: other work on the machine would count.
 */
function rate<T>(items: readonly T[], use: (item: T) => void): number {
  for (const item of items) use(item);
  const start = process.cpuUsage();
  let calls = 0;
  let seconds = 0;
  while (seconds < SECONDS) {
    for (const item of items) use(item);
    calls += items.length;
    const { user, system } = process.cpuUsage(start);
    seconds = (user + system) / 1e6;
  }
  return calls / seconds;
}

const smallest = (bytes: Uint8Array): number =>
  brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }).length;

/** How often damage that repair cannot undo is taken for another code, in a million. */
function wronglyTaken(given: (code: Uint8Array) => Uint8Array, runs: number): number {
  const random = makeRandom(1);
  let taken = 0;
  for (let run = 0; run < runs; run += 1) {
    const code = protect(random.symbols(10), 16);
    const found = repair(given(code));
    if (found.ok && found.value.code.join() !== code.join()) taken += 1;
  }
  return (taken / runs) * 1e6;
}

/** The figures of the note code. */
export function benchNote(): Promise<Row[]> {
  return Promise.resolve(measure());
}

function measure(): Row[] {
  const codebooks = makeCodebooks(releases());
  const newest = releases().length;
  const codebook = codebooks.get(newest);
  const guide = codebook && codebookGuide(codebook, 'door-locked');
  if (!guide) throw new Error('no guide door-locked');

  const base = { release: newest, guide: guide.id, details: {}, error: '' };
  const notes = [...sampleJourneys(guide, SAMPLE, 1)].map((journey, i): Note => ({
    ...base,
    journey,
    day: i % 32,
  }));
  const codes = notes.map((note) => {
    const code = writeCode(note, codebooks);
    if (!code.ok) throw new Error(JSON.stringify(code.error));
    return code.value;
  });
  const random = makeRandom(2);
  const swap = (code: string): string => {
    const symbols = code.replaceAll('-', '');
    const at = random.below(14);
    return (
      symbols.slice(0, at) + symbols.charAt(at + 1) + symbols.charAt(at) + symbols.slice(at + 2)
    );
  };
  const lose = (code: string): string => {
    const symbols = code.replaceAll('-', '');
    const at = random.below(16);
    return symbols.slice(0, at) + symbols.slice(at + 1);
  };
  const read = (code: string): unknown => readCode(code, codebooks);
  const release = readFileSync(inRoot(`content/releases/${String(newest)}.json`));
  const bits = Math.log2(Number(guide.first.journeys));

  return [
    { name: 'note: clean codes read', value: rate(codes, read), unit: '/s', floor: 50_000 },
    {
      name: 'note: swapped codes read',
      value: rate(codes.map(swap), read),
      unit: '/s',
      floor: 2000,
    },
    {
      name: 'note: codes a character short read',
      value: rate(codes.map(lose), read),
      unit: '/s',
      floor: 2000,
    },
    { name: 'note: codes written', value: rate(notes, (n) => writeCode(n, codebooks)), unit: '/s' },
    {
      name: 'note: release book',
      value: smallest(Buffer.from(JSON.stringify(JSON.parse(release.toString())))),
      unit: 'B brotli',
    },
    { name: 'note: journeys of door-locked', value: Number(guide.first.journeys), unit: '' },
    { name: 'note: bits of such a journey', value: bits, unit: 'bit' },
    {
      name: 'note: 5 wrong characters taken wrongly',
      value: wronglyTaken((code) => spoil(code, random.places(5, 16), random), 300_000),
      unit: 'in 10⁶',
    },
    // Words within two changes of a codeword, (1 + 16·31 + 120·31²) / 32⁶ = 1.08e-4 of all, or three
    // sound-alikes, 560·4.06³ / 32⁶ = 3.5e-5.
    {
      name: 'note: random text taken',
      value: wronglyTaken(() => random.symbols(16), 300_000),
      unit: 'in 10⁶',
      note: 'chance alone: 143',
    },
  ];
}
