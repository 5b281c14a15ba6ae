import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import {
  MOST_CHARACTERS,
  MOST_COLUMNS,
  MOST_VISITS,
  entriesOf,
} from '../../../src/route/entries.ts';
import { jobLabels } from '../../../src/app/shared/job-text.ts';
import { staffWords } from '../../../src/cli/words.ts';
import { readPasted } from '../../../src/visit/hand-over.ts';
import { csvOf } from '../../../src/route/table.ts';
import type { NoteCode } from '../../../src/note/types.ts';
import { spell } from '../../../src/note/spelling.ts';
import { damaged, publishedCodebooks, sampleCodes } from './support/codes.ts';

const current = publishedCodebooks();
const { codebooks } = current;
const labels = jobLabels(staffWords());
const readEntry = (text: string) => readPasted(text, codebooks, labels).reading;
const codes = sampleCodes(current, 12);
const [a = '', b = '', c = ''] = codes;
const taken = (text: string, room?: number) => {
  const found = entriesOf(text, codebooks, labels, room);
  if (!found.ok) throw new Error(JSON.stringify(found.error));
  return found.value;
};

describe('lines', () => {
  test('one code each, blank ones passed over, rows counted with them', () => {
    const { entries, codes: column, columns } = taken(`\ufeff${a}\r\n\r\n  ${b}  \n\n${c}`);
    expect(entries.map(({ row, text }) => [row, text])).toEqual([
      [1, a],
      [3, b],
      [5, c],
    ]);
    expect([column, columns]).toEqual([undefined, []]);
  });

  test('a line is kept as given whatever it is: nothing is dropped', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: 'grapheme-ascii', minLength: 1 }), { maxLength: 20 }),
        (lines) => {
          // Without what makes a table of it.
          const given = lines.map((line) => line.replace(/[,;"\t]/g, '').trim()).filter(Boolean);
          const plain = given.filter((line) => line.toLowerCase() !== 'code');
          if (plain.length === 0) return;
          expect(taken(plain.join('\n')).entries.map(({ text }) => text)).toEqual(plain);
        },
      ),
    );
  });
});

describe('what a line may be', () => {
  test.each([
    ['as written', a],
    ['small, without hyphens', a.toLowerCase().replaceAll('-', '')],
    [
      'spelling words',
      spell(a as NoteCode)
        .flat()
        .join(' '),
    ],
    ['the long form’s address', `https://range.example/preview/#c=${a}&m=X-1`],
    ['its fragment', `#c=${a}&r=hot%2C%20loud`],
  ])('%s', (_, text) => {
    expect(readEntry(text)).toMatchObject({ kind: 'exact', code: a });
  });

  test('a damaged one is a proposal, a foreign address is refused', () => {
    expect(readEntry(damaged(a, 2))).toMatchObject({ kind: 'repaired', code: a });
    expect(readEntry('https://range.example/').kind).toBe('refused');
  });
});

describe('tables', () => {
  test('with a column headed "code", the others carried along', () => {
    const found = taken(`Name,Code,Street\r\n"Lane, A.",${a},"1 ""Long"" Way"\nB,${b}\n`);
    expect(found).toEqual({
      columns: ['Name', 'Street'],
      codes: 'Code',
      entries: [
        { row: 2, text: a, others: ['Lane, A.', '1 "Long" Way'] },
        { row: 3, text: b, others: ['B', ''] },
      ],
    });
  });

  test.each([
    [',', 'comma'],
    [';', 'semicolon'],
    ['\t', 'tab'],
  ])('divided by %j (%s), the column found by its cells', (sign) => {
    const rows = [['Kunde', 'Zettel'], ...codes.map((code, i) => [`Nr. ${String(i)}`, code])];
    const found = taken(rows.map((row) => row.join(sign)).join('\n'));
    expect(found.codes).toBe('Zettel');
    expect(found.entries.map(({ text }) => text)).toEqual(codes);
  });

  test('without headings the columns go by number, a damaged first code included', () => {
    const found = taken(`${damaged(a, 0, 2, 5, 7)},North\n${b},South\n`);
    expect(found).toMatchObject({ columns: ['2'], codes: '1' });
    expect(found.entries).toHaveLength(2);
  });

  test('a quotation mark that never closes is told with its row', () => {
    expect(entriesOf(`code,name\n${a},"open\n${b},x\n`, codebooks, labels)).toEqual({
      ok: false,
      error: { code: 'quotes', row: 2 },
    });
  });
});

describe('bounds', () => {
  test('500 are taken, 501 refused as a whole', () => {
    const many = (size: number) => `${a}\n`.repeat(size);
    expect(taken(many(MOST_VISITS)).entries).toHaveLength(500);
    expect(entriesOf(many(501), codebooks, labels)).toEqual({
      ok: false,
      error: { code: 'too-many', given: 501, most: 500 },
    });
    expect(entriesOf(many(3), codebooks, labels, 2)).toMatchObject({
      error: { given: 3, most: 2 },
    });
  });

  test('nothing and far too much are refused', () => {
    expect(entriesOf(' \n\t\n', codebooks, labels)).toEqual({
      ok: false,
      error: { code: 'nothing' },
    });
    expect(entriesOf('A'.repeat(MOST_CHARACTERS + 1), codebooks, labels)).toMatchObject({
      error: { code: 'too-large' },
    });
  });
});

describe('more columns than a list of visits has', () => {
  test('its lines are listed as they are', () => {
    const row = [a, ...Array<string>(MOST_COLUMNS).fill('x')].join();
    expect(taken(`${row}\n${b}`)).toMatchObject({
      codes: undefined,
      entries: [{ text: row }, { text: b }],
    });
    // The wide row stands behind those that are looked at to find the column.
    const late = [...Array<string>(50).fill(`${a},x`), row];
    expect(taken(late.join('\n')).entries.map(({ text }) => text)).toEqual(late);
    expect(taken([a, ...Array<string>(MOST_COLUMNS - 1).fill('x')].join()).codes).toBe('1');
  });

  // A call takes some 100,000 arguments (V8's stack, from memory): rows and cells may be more.
  test.each([',', ';a', '\tA1', '"', '\0', '\ud800', 'a,"b"c"'])(
    'a million characters of %j are answered',
    (bit) => {
      const text = bit.repeat(MOST_CHARACTERS / bit.length);
      const found = entriesOf(text, codebooks, labels);
      if (found.ok) expect(found.value.entries.map((entry) => entry.text)).toEqual([text.trim()]);
      else expect(found.error.code).toBe('quotes');
    },
  );
});

describe('tables out', () => {
  /** OWASP, "CSV Injection": the signs a cell must not begin with. */
  const SIGNS = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];

  test.each(SIGNS)('a cell that begins with %j is text', (sign) => {
    const text = csvOf([[`${sign}1+1`, 'plain']]);
    expect(text.startsWith(`"'${sign}1+1"`)).toBe(true);
  });

  test('read back as they were, but for the apostrophe; written again they do not change', () => {
    const cell = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.constantFrom(...SIGNS).chain((sign) => fc.string().map((rest) => sign + rest)),
      fc.constantFrom('"', '""', 'a,b', 'a\r\nb', ';', ' x '),
    );
    let neutralised = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5 }).chain((width) =>
          fc.array(fc.array(cell, { minLength: width, maxLength: width }), {
            minLength: 1,
            maxLength: 8,
          }),
        ),
        (rows) => {
          const text = csvOf(rows);
          const back = Papa.parse<string[]>(text, { delimiter: ',', newline: '\r\n' }).data;
          // The last line's end makes one empty row more.
          const bare = (all: string[][]) =>
            all.map((row) =>
              row.map((one) => one.replaceAll("'", '').replace(/(?![\t\r\n])\p{Cc}/gu, '\ufffd')),
            );
          expect(bare(back.slice(0, -1))).toEqual(bare(rows));
          for (const [index, one] of rows.flat().entries()) {
            if (!SIGNS.some((sign) => one.startsWith(sign))) continue;
            neutralised++;
            expect(back.flat()[index]).toMatch(/^'/);
          }
          const again = Papa.parse(csvOf(back.slice(0, -1)), { delimiter: ',', newline: '\r\n' });
          expect(again.data).toEqual(back);
        },
      ),
    );
    expect(neutralised).toBeGreaterThan(100);
  });
});
