// The round's list as it is pasted: codes in lines, or a table with a column of them.
import Papa from 'papaparse';
import { isDeepStrictEqual } from 'node:util';
import { withEntries } from '../../../src/route/columns.ts';
import { entriesOf } from '../../../src/route/entries.ts';
import { jobLabels } from '../../../src/app/shared/job-text.ts';
import { staffWords } from '../../../src/cli/words.ts';
import { readPasted } from '../../../src/visit/hand-over.ts';
import { csvOf } from '../../../src/route/table.ts';
import type { Target } from './engine.ts';
import { SPELLED, codesOf, hold, codebooks } from './good.ts';

/** What a spreadsheet may take for a formula: OWASP, "CSV Injection". */
const FORMULA = /^[=+\-@\t\r\uff0b\uff0d\uff1d\uff20]/;

/** How often each character stands in a text; signs that divide or quote cells are not content. */
function counts(text: string): Map<string, number> {
  const found = new Map<string, number>();
  for (const sign of text.replace(/[\s",;]/g, '').split(''))
    found.set(sign, (found.get(sign) ?? 0) + 1);
  return found;
}

/** The characters of `whole` that `part` leaves over; undefined where `part` has more of one. */
function leftOver(whole: string, part: string): string | undefined {
  const all = counts(whole);
  for (const [sign, times] of counts(part)) all.set(sign, (all.get(sign) ?? 0) - times);
  if ([...all.values()].some((times) => times < 0)) return undefined;
  return [...all].map(([sign, times]) => sign.repeat(times)).join('');
}

const labels = jobLabels(staffWords());

/** What a spreadsheet or a chat puts on the clipboard: a list or a table with codes. */
export const pasted: Target = {
  name: 'pasted round',
  longest: 6000,
  seeds: [
    codesOf('door-locked').join('\n'),
    ...[',', ';', '\t'].map((sign) =>
      [['Name', 'Ticket', 'Phone'], ...codesOf('no-heat').map((one) => ['=1+1', one, '@x'])]
        .map((row) => row.join(sign))
        .join('\r\n'),
    ),
    `\ufeffcode,remark\r\n${codesOf('burner')
      .map((one) => `${one},"says ""F9"",\nthen\u00a0\ud83d stops"`)
      .join('\r\n')}`,
    `code${',x'.repeat(300)}\n${SPELLED}\n`,
    `\0\n${'4'.repeat(6000)}`,
  ],
  bits: [
    ...[
      '"',
      '""',
      '","',
      '"\n',
      '\r',
      '\r\n',
      ',',
      ';',
      '\t',
      ',,,,',
      '\0',
      '\ufeff',
      '\ud800',
      '\udc00',
    ],
    ...[
      '=cmd()',
      '+1',
      '@x',
      "'=",
      'code',
      'code,',
      '\n\n',
      ' \n',
      '4GK5-84J7-KCVW-F7F3',
      '"=1+1",',
    ],
  ],
  read(input) {
    const text = input.replace(/\r\n?/g, '\n');
    const lines = text.split('\n');
    const found = entriesOf(input, codebooks, labels);
    if (!found.ok) {
      const { error } = found;
      if (error.code === 'nothing') return 'nothing';
      hold(error.code === 'quotes' || error.given > error.most, 'a refusal is true');
      if (error.code === 'quotes')
        hold(error.row >= 1 && error.row <= lines.length, 'it names a row there is');
      return error.code;
    }
    const { entries, columns, codes } = found.value;
    // In lines as they are, each that is not blank is an entry of its own.
    if (codes === undefined && columns.length === 0)
      hold(
        isDeepStrictEqual(
          entries.map((entry) => entry.text),
          lines.map((line) => line.trim()).filter((line) => line !== ''),
        ),
        'every line is listed',
      );
    const cells = entries.flatMap((entry) => [entry.text, ...entry.others]).join('');
    const left = leftOver(text, cells);
    hold(left !== undefined, 'nothing is made up');
    // What is in no entry stands in the headings.
    hold(leftOver([...columns, codes].join(''), left) !== undefined, 'nothing is left out');
    hold(
      entries.every(({ row }, i) => row <= lines.length && row > (entries[i - 1]?.row ?? 0)),
      'rows are rows, in their order',
    );
    const placed = withEntries(['Phone', 'x'], found.value);
    hold(
      placed.entries.flatMap((entry) => entry.others).join('').length ===
        entries.flatMap((entry) => entry.others).join('').length,
      'each cell finds its column',
    );
    const table = csvOf(entries.map((entry) => ['code', entry.text, ...entry.others]));
    hold(
      !Papa.parse<string[]>(table, { delimiter: ',' })
        .data.flat()
        .some((cell) => FORMULA.test(cell)),
      'no formula',
    );
    const kind = codes === undefined ? 'lines' : /^\d+$/.test(codes) ? 'numbered' : 'headed';
    const unread = entries.filter(
      (entry) => readPasted(entry.text, codebooks, labels).reading.kind !== 'exact',
    );
    return `${kind} ${String(columns.length)} columns, ${String(entries.length)} entries, ${String(unread.length)} unread`;
  },
};
