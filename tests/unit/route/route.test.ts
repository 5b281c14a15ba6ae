import { spawnSync } from 'node:child_process';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { loadFigures, makeRoute, routeCsv, routeOutput } from '../../../src/cli/route.ts';
import { tellEntries } from '../../../src/cli/route-words.ts';
import { routeSchema } from '../../../src/cli/route-json.ts';
import { model } from '../../../src/content/load.ts';
import { textOf } from '../../../src/decode.ts';
import { plan } from '../../../src/diagnosis/plan.ts';
import { shares } from '../../../src/diagnosis/posterior.ts';
import { makeAssess } from '../../../src/visit/assess.ts';
import { routeJson } from '../../../src/route/json.ts';
import { csvOf } from '../../../src/route/table.ts';
import { byUrgency, urgencyOrder } from '../../../src/visit/read-visit.ts';
import { damaged, publishedCodebooks, sampleCodes } from './support/codes.ts';

const current = publishedCodebooks();
const figures = loadFigures();
const today = new Date('2026-11-25T10:00:00Z');
const codes = sampleCodes(current, 40);
const [first = '', second = ''] = codes;
const routeOf = (text: string) => {
  const made = makeRoute(text, current, figures);
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value;
};
const whole = routeOf(codes.join('\n'));

describe('a route', () => {
  test('has every code, the most urgent first, equally urgent ones as given', () => {
    expect(whole.visits.map(({ code }) => String(code)).toSorted()).toEqual(codes.toSorted());
    const places = whole.visits.map(({ seen }) => urgencyOrder.indexOf(seen?.urgency ?? 'open'));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(new Set(places).size).toBeGreaterThan(2);
    expect(byUrgency(whole.visits)).toEqual(whole.visits);
    for (const urgency of urgencyOrder) {
      const rows = whole.visits.filter(({ seen }) => seen?.urgency === urgency);
      expect(rows.map(({ row }) => row)).toEqual(
        rows.map(({ row }) => row).toSorted((a, b) => a - b),
      );
    }
  });

  test('its figures are those of the diagnosis, remembered or not', () => {
    const assess = makeAssess();
    let seen = 0;
    for (const { seen: visit, assessed } of whole.visits) {
      if (!visit?.model || !assessed) continue;
      seen++;
      const fresh = shares(visit.model, visit.evidence);
      for (const [fault, share] of assessed.shares.entries())
        expect(share).toBeCloseTo(fresh[fault] ?? NaN, 12);
      expect(assessed.expected).toBeCloseTo(
        plan(visit.model, visit.evidence).best.expectedMinutes,
        8,
      );
      expect(assessed.cautious).toBeGreaterThanOrEqual(0);
      expect(assess(visit)).toEqual(assessed);
    }
    expect(seen).toBe(
      whole.visits.filter(({ seen: one }) => one?.model && one.urgency !== 'emergency').length,
    );
    // One guide has no figures.
    expect(seen).toBeGreaterThan(whole.visits.length / 3);
  });

  test('a visit without a code goes along: in a table, of a desk, and all of them', () => {
    const mixed = routeOf(`Time,Name,Code\n8-10,Ann,${first}\n10-12,Bo,no code yet\n1-3,Cy,\n`);
    expect(mixed.visits.map(({ code }) => code ?? '').toSorted()).toEqual(['', '', first]);
    expect(mixed.unread).toEqual([]);
    const none = routeOf('Time,Name,Address\n8-10,Ann,12 Long Lane\n1-3,Bo,3 Short Lane\n');
    expect(none.visits.map(({ others }) => others[1])).toEqual(['Ann', 'Bo']);
    expect(none.visits.every(({ code, assessed }) => !code && !assessed)).toBe(true);
    const json = routeSchema.parse(routeJson(mixed, today));
    expect(json.visits.filter(({ code }) => code === null)).toHaveLength(2);
  });

  test('a damaged line is no visit until confirmed, and is kept as given', () => {
    const route = routeOf(`${first}\n${damaged(second, 1)}\nnonsense\n`);
    expect(route.visits).toHaveLength(1);
    expect(route.unread.map(({ row, text }) => [row, text])).toEqual([
      [2, damaged(second, 1)],
      [3, 'nonsense'],
    ]);
    expect(route.unread[0]?.reading).toMatchObject({ kind: 'repaired', code: second });
  });
});

describe('as JSON', () => {
  const json = routeJson(whole, today);

  test('it is as its published schema says, damaged lines too', () => {
    routeSchema.parse(json);
    routeSchema.parse(
      routeJson(routeOf(`code,who\n${first},A\n${damaged(second, 1)},=B\n?,C`), today),
    );
  });

  test('the load: parts by model at their visits, the others counted for all', () => {
    const fits = new Map(model().parts.map((part) => [String(part.id), part.fits]));
    const own = json.visits.flatMap(({ figures: found }) => found?.load ?? []);
    expect(new Set(own).size).toBeGreaterThan(3);
    expect(json.load.stock.length).toBeGreaterThan(2);
    expect(own.filter((part) => fits.get(part) !== 'model')).toEqual([]);
    expect(json.load.stock.filter(({ part }) => fits.get(part) !== 'any')).toEqual([]);
  });

  test('an emergency has no parts and no minutes, and is not in the load', () => {
    const danger = json.visits.filter(({ urgency }) => urgency === 'emergency');
    expect(danger.length).toBeGreaterThan(0);
    expect(danger.map(({ figures: found }) => found)).toEqual(danger.map(() => null));
  });

  test('the cautious day is shorter than the visits’ cautious figures added up', () => {
    const added = json.visits.reduce(
      (all, { figures: one }) => all + (one?.minutes.cautious ?? 0),
      0,
    );
    expect(json.total.cautious).toBeGreaterThan(json.total.expected);
    expect(json.total.cautious).toBeLessThan(added);
  });
});

describe('as a table', () => {
  test('carries other columns along, neutralises formulas, and can be read again', () => {
    const rows = `who,code,phone\n=HYPERLINK("x"),${first},+12075550142\nB,${damaged(second, 1)},@x\n`;
    const route = routeOf(rows.replace('=HYPERLINK("x")', '"=HYPERLINK(""x"")"'));
    const text = routeCsv(routeJson(route, today), route);
    expect(text).toContain(`"'=HYPERLINK(""x"")"`);
    expect(text).toContain(`"'+12075550142"`);
    expect(text).toContain(`"'@x"`);
    const again = routeOf(text);
    expect(again.visits.map(({ code }) => String(code))).toEqual([first]);
    expect(again.unread.map((one) => one.text)).toEqual([damaged(second, 1)]);
    // What the table has anew is not carried twice.
    const written = routeCsv(routeJson(again, today), again);
    const cells = (csv: string) => Papa.parse(csv, { delimiter: ',' }).data;
    expect(cells(written)).toEqual(cells(text));
  });

  test.each([
    ['blank', ',', '2'],
    ['a number', '3,', '3'],
    ['a year', '2026,', '2026'],
    ['no number', '__proto__,', '__proto__'],
    ['two alike', 'Time,', 'Time'],
  ])('every cell stays under its heading where one is %s', (_, heading, shown) => {
    const rows = `code,Name,${heading.replace(/,$/, '')},Time\n${first},Ada,gate 4,9:00\n${damaged(second, 1)},Bo,yard,9:30\n`;
    const route = routeOf(rows);
    const text = routeCsv(routeJson(route, today), route);
    const [head = [], ...lines] = Papa.parse<string[]>(text.trimEnd()).data;
    expect(head.slice(-3)).toEqual(['Name', heading === ',' ? '3' : shown, 'Time']);
    expect(lines.map((line) => line.slice(-3))).toEqual([
      ['Ada', 'gate 4', '9:00'],
      ['Bo', 'yard', '9:30'],
    ]);
  });

  test('columns headed alike, or like our own name for such a one, all reach the JSON', () => {
    const { visits } = routeJson(routeOf(`code,a,a,a (2),a\n${first},1,2,3,4\n`), today);
    expect(Object.values(visits[0]?.columns ?? {}).toSorted()).toEqual(['1', '2', '3', '4']);
  });

  test('no cell is a formula, whatever separates a spreadsheet’s cells', () => {
    const evil = [
      ...['=1+1', '+1', '-1', '@A1', '＝1', '\t=1', '\r=1', '\n=1', ' =1', '"=1', "'=1", '  "=1"'],
      ...[
        'a;=1+1;b',
        'a\t=1',
        'a|=1',
        'a\n=1',
        'a; =1',
        'a;"=1"',
        'a";"=1',
        'a\n"+1',
        ';;=1',
        'a;\t=1',
      ],
      ...['a|\n@x', '";=1', '"";"=1";"', 'a;＋1', '\u00a0=1', '\ufeff=1', 'a\r\n-1', '\u2028=1'],
    ];
    for (const cell of evil) {
      const csv = csvOf([['first', cell, 'last']]);
      // As it should be read, and as programs read it that are set to another separator.
      const cells = [
        ...Papa.parse<string[]>(csv, { delimiter: ',' }).data.flat(),
        ...csv.split(/[;|\t\r\n]/),
      ];
      for (const one of cells)
        expect(one.replace(/^[\s"\ufeff]+/, ''), JSON.stringify(cell)).not.toMatch(
          /^[=+\-@＝＋－＠]/,
        );
    }
    expect(csvOf([['a\u001b[31m', 'plain, text; too', '5-6']])).toBe(
      '"a\ufffd[31m","plain, text; too","5-6"\r\n',
    );
  });
});

describe('the command', () => {
  const run = (input: string, ...args: string[]) =>
    spawnSync(process.execPath, ['src/cli/note.ts', 'round', ...args], { input, encoding: 'utf8' });

  const output = (text: string) => routeOutput(text, current, today, false);

  test('prints the route, and fails where a line is no visit', () => {
    const good = output(`${first}\n${second}\n`);
    if (!good.ok) return expect.unreachable(JSON.stringify(good.error));
    expect(good.value.good).toBe(true);
    expect(routeSchema.parse(JSON.parse(good.value.text)).visits).toHaveLength(2);
    const bad = run(`${first}\n${damaged(second, 1)}\n`, '--csv');
    expect(bad.status).toBe(2);
    expect(bad.stdout.split('\r\n')[0]).toMatch(/^"code","urgency",/);
    expect(bad.stdout).toContain(`proposal ${second}`);
  });

  test.each([
    ['Latin-1', Buffer.from(`code,Name\n${'A'.repeat(16)},Ren\u00e9\n`, 'latin1'), 'CSV UTF-8'],
    ['UTF-16 without its mark', Buffer.from('code\nA\n', 'utf16le'), 'CSV UTF-8'],
    ['no text', Buffer.from([0xff, 0xff, 0, 1, 0x80]), 'CSV UTF-8'],
    ['too long', Buffer.alloc(4_000_001, '\n'), 'too long'],
  ])('refuses by name what is %s', (_, input, named) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, ['src/cli/note.ts', 'round'], {
      input,
      encoding: 'utf8',
    });
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toContain(named);
    expect(stderr).not.toContain('    at ');
  });

  test('reads UTF-16 with its mark, either way round, and UTF-8 with one', () => {
    const text = `\ufeffcode,Name\n${first},René\n`;
    const little = Buffer.from(text, 'utf16le');
    for (const bytes of [little, Buffer.from(little).swap16(), Buffer.from(text)])
      expect(textOf(new Uint8Array(bytes))).toEqual({ ok: true, value: text.slice(1) });
    expect(textOf(new Uint8Array())).toEqual({ ok: true, value: '' });
    for (const cut of [[0xff, 0xfe, 0x41], [0xfe, 0xff, 0xd8, 0], [0xc3], [0xef, 0xbb]])
      expect(textOf(Uint8Array.from(cut)).ok, String(cut)).toBe(false);
  });

  test('says what to do where it prints nothing', () => {
    const { status, stdout, stderr } = run('');
    expect([status, stdout]).toEqual([2, '']);
    const nothing = output('');
    expect(nothing.ok || tellEntries(nothing.error)).toBe(stderr.trimEnd());
    const many = output(`${first}\n`.repeat(501));
    expect(many.ok || tellEntries(many.error)).toContain('Split the list.');
  });
});
