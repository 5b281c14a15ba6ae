import { describe, expect, test } from 'vitest';
import { readBack } from '../../../src/note/read-back.ts';
import type { Compared } from '../../../src/note/read-back.ts';
import { digitGroups, spell } from '../../../src/note/spelling.ts';
import { digitNames } from '../../../src/note/typed.ts';
import { alphabet } from '../../../src/note/symbols.ts';
import type { NoteCode } from '../../../src/note/types.ts';
import { writeCode } from '../../../src/note/write.ts';
import { plainNote, working } from './codebooks.ts';
import { makeRandom } from './random.ts';

const SEED = 11;
const random = makeRandom(SEED);
const codes = Array.from({ length: 60 }, (_, i) => {
  const code = writeCode(plainNote(BigInt(i) * 977n, i % 32), working);
  return code.ok ? code.value : expect.unreachable();
});
const bare = (code: NoteCode): string => code.replaceAll('-', '');
const other = (sign: string): string => {
  const next = (alphabet.indexOf(sign) + 1 + random.below(31)) % 32;
  return alphabet.charAt(next);
};
const differing = (back: ReturnType<typeof readBack>): Compared[] =>
  back.kind === 'different' ? back.places.filter(({ how }) => how !== 'same') : [];

/** Levenshtein's distance straight from its definition, from memory; the slow reference. */
function distance(a: string, b: string, known = new Map<string, number>()): number {
  const key = `${a.length},${b.length}`;
  const seen = known.get(key);
  if (seen !== undefined) return seen;
  const made =
    a === '' || b === ''
      ? a.length + b.length
      : Math.min(
          distance(a.slice(1), b, known) + 1,
          distance(a, b.slice(1), known) + 1,
          distance(a.slice(1), b.slice(1), known) + (a.startsWith(b.charAt(0)) ? 0 : 1),
        );
  known.set(key, made);
  return made;
}

describe('read back as given', () => {
  test.each([
    ['in groups', (code: NoteCode) => code],
    ['without hyphens, in small letters', (code: NoteCode) => bare(code).toLowerCase()],
    ['with O for 0 and L for 1', (code: NoteCode) => code.replace(/0/g, 'o').replace(/1/g, 'L')],
    ['spelled', (code: NoteCode) => spell(code).flat().join(' ')],
    [
      'spelled with the digits as words',
      (code: NoteCode) =>
        spell(code)
          .flat()
          .map((sign) => digitNames[Number(sign)] ?? sign)
          .join(' '),
    ],
  ])('%s', (_, said) => {
    for (const code of codes)
      expect(readBack(code, said(code), true), code).toEqual({
        kind: 'same',
        given: bare(code).length,
        of: bare(code).length,
      });
  });

  test('every beginning is right so far, and is short when it counts as whole', () => {
    for (const code of codes.slice(0, 20))
      for (let given = 1; given < bare(code).length; given += 1) {
        const said = bare(code).slice(0, given);
        const of = bare(code).length;
        expect(readBack(code, said, false), said).toEqual({ kind: 'so-far', given, of });
        expect(differing(readBack(code, said, true)), said).toHaveLength(of - given);
      }
  });
});

describe('differences', () => {
  test('every wrong character is found, and it alone, typed on or whole', () => {
    for (const code of codes)
      for (const [at, is] of [...bare(code)].entries()) {
        const was = other(is);
        const said = bare(code).slice(0, at) + was + bare(code).slice(at + 1);
        for (const whole of [false, true]) {
          const found = differing(readBack(code, said, whole));
          expect(found.length, `${said} for ${code} (seed ${SEED})`).toBeGreaterThan(0);
          // A last wrong one while typing may as well be an extra one.
          if (whole) expect(found).toEqual([{ at, is, was, how: 'wrong' }]);
        }
      }
  });

  test('an unreadable, a missing and an extra one are told apart', () => {
    const code = 'ABCD-EFGH-JKMN-PQRS' as NoteCode;
    const found = (said: string) => differing(readBack(code, said, true));
    expect(found('ABCD-E?GH-JKMN-PQRS')).toEqual([{ at: 5, is: 'F', was: '?', how: 'unreadable' }]);
    expect(found('ABCD-EGH-JKMN-PQRS')).toEqual([{ at: 5, is: 'F', was: '', how: 'missing' }]);
    expect(found('ABCD-EF9GH-JKMN-PQRS')).toEqual([{ at: 6, is: '', was: '9', how: 'extra' }]);
    expect(found('ABCD-EFGH-JKMN-PQR')).toEqual([{ at: 15, is: 'S', was: '', how: 'missing' }]);
  });

  test('as few as can be: Levenshtein’s distance, on codes changed at random', () => {
    let most = 0;
    for (const code of codes)
      for (let changes = 1; changes <= 6; changes += 1) {
        let said = bare(code);
        for (let i = 0; i < changes; i += 1) {
          const at = random.below(said.length);
          const put = random.pick(['', other(said.charAt(at)), `${said.charAt(at)}7`]);
          said = said.slice(0, at) + put + said.slice(at + 1);
        }
        const expected = distance(bare(code), said);
        const back = readBack(code, said, true);
        const count = back.kind === 'different' ? back.count : 0;
        expect(count, `${said} for ${code} (seed ${SEED})`).toBe(expected);
        most = Math.max(most, count);
        if (back.kind !== 'different') continue;
        // The alignment holds both texts, whole and in order.
        expect(back.places.map(({ is }) => is).join('')).toBe(bare(code));
        expect(back.places.map(({ was }) => was).join('')).toBe(said);
      }
    expect(most).toBeGreaterThan(4);
  });
});

test.each([
  ['', 'empty'],
  [' - ', 'empty'],
  ['ABCU', 'bad-symbol'],
  ['<script>', 'bad-symbol'],
  ['\u202eABCD', 'bad-symbol'],
  ['Alfa Bravo Charley', 'bad-word'],
])('%j is unclear: %s', (said, problem) => {
  const back = readBack(codes[0] ?? expect.unreachable(), said, true);
  expect(back.kind === 'unclear' && back.problem.code).toBe(problem);
});

test('a text longer than any code is not looked at', () => {
  const back = readBack(codes[0] ?? expect.unreachable(), 'A'.repeat(10_000), true);
  expect(back).toMatchObject({ kind: 'unclear', problem: { code: 'too-long', given: 10_000 } });
});

test('digits read back are counted as digits, and one wrong is told among them', () => {
  const [code = expect.unreachable()] = codes;
  const digits = digitGroups(code).join('');
  expect(readBack(code, digits, true)).toEqual({ kind: 'same', given: 32, of: 32 });
  expect(readBack(code, digits.slice(0, 7), false)).toEqual({ kind: 'so-far', given: 7, of: 32 });
  const wrong = digits.startsWith('9') ? '8' : '9';
  const back = readBack(code, wrong + digits.slice(1), true);
  expect(back).toMatchObject({ kind: 'different', count: 1, digits: true });
  expect(differing(back)).toEqual([{ at: 0, is: digits.charAt(0), was: wrong, how: 'wrong' }]);
});
