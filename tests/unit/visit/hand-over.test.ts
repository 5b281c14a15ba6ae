// A job is written one way and read everywhere: as text, as JSON, with a mail around it.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jobLabels, jobText } from '../../../src/app/shared/job-text.ts';
import { detailName, nodeWords } from '../../../src/app/shared/content-words.ts';
import { jobSchema } from '../../../src/cli/job-json.ts';
import { jobLines } from '../../../src/cli/note-commands.ts';
import { staffWords } from '../../../src/cli/words.ts';
import { details, guides, models, staffViews } from '../../../src/content/load.ts';
import { readCode } from '../../../src/note/read.ts';
import { entriesOf } from '../../../src/route/entries.ts';
import { handOvers, joined, readPasted } from '../../../src/visit/hand-over.ts';
import { callerFields, makeJob, tidyCaller, type Caller } from '../../../src/visit/job.ts';
import { readVisit } from '../../../src/visit/read-visit.ts';
import { damaged, publishedCodebooks, sampleCodes } from '../route/support/codes.ts';

const current = publishedCodebooks();
const { codebooks } = current;
const words = staffWords();
const labels = jobLabels(words);
const figures = { models: models(), staffViews: staffViews() };
const codes = sampleCodes(current, 60).filter((code) => {
  const reading = readCode(code, codebooks);
  return reading.kind === 'exact' && reading.note.journey.length > 0;
});
const [first = '', second = ''] = codes;

/** What people and enemies of the form might say. */
const said = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc.constantFrom(
    'Ann Lane',
    `Code: ${second}`,
    `{"code":"${second}"}`,
    `https://x.example/#c=${second}`,
    'Job: x\nName: y\r\nCode: no code yet',
    '> quoted',
    'Remark: a\n\n\nRemark: b',
    'no code yet',
    '}{"',
    '\u202eneerg\u2028Code:',
  ),
);
const callers = fc
  .record(Object.fromEntries(callerFields.map((field) => [field, said])), { requiredKeys: [] })
  .map((caller) => tidyCaller(caller));

function jobOf(code: string, caller: Caller, back?: boolean) {
  const reading = readCode(code, codebooks);
  if (reading.kind !== 'exact') throw new Error(code);
  const view = readVisit(reading.note, codebooks, figures);
  const job = makeJob(view, {
    called: '2026-11-28T14:05',
    code: reading.code,
    link: `https://range.example/preview/#c=${reading.code}`,
    made: '2026-11-28',
    caller,
    clerk: caller.name ?? '',
    ...(back === undefined ? {} : { codeReadBack: back }),
  });
  if (!job) throw new Error(code);
  return { job, view, text: jobText(words, view, job), json: JSON.stringify(job, undefined, 2) };
}

const quoted = (text: string) => text.replaceAll(/^/gm, '> ').replaceAll('\n', '\r\n');
const mailed = (text: string) =>
  `Hi Bo,\r\nplease take this one: it may need a call first.\r\n\r\n${quoted(text)}\r\n\r\nThanks\r\n-- \r\nLantern Lane, (207) 555-0142\r\n`;

describe('what one page writes all others read', () => {
  test('random jobs, hostile words, text and JSON, with a mail around it or not', () => {
    expect(codes.length).toBeGreaterThan(40);
    fc.assert(
      fc.property(
        fc.constantFrom(...codes),
        callers,
        fc.option(fc.boolean(), { nil: undefined }),
        (code, caller, back) => {
          const { job, text, json } = jobOf(code, caller, back);
          expect(jobSchema.safeParse(JSON.parse(json)).error).toBeUndefined();
          for (const form of [text, json, mailed(text), mailed(json)]) {
            const { reading, came } = readPasted(form, codebooks, labels);
            expect(reading).toMatchObject({ kind: 'exact', code });
            expect(came?.caller).toEqual(job.caller);
            expect([came?.called, came?.clerk]).toEqual([job.called, job.clerk]);
            expect(came?.error ?? '').toBe(job.error);
            const route = entriesOf(form, codebooks, labels);
            expect(route.ok && route.value.entries.map((entry) => entry.text)).toEqual([code]);
          }
        },
      ),
    );
  });

  test('the command line writes the same job anew from either form', () => {
    const caller = { name: 'Ann', phone: '(207) 555-0107', remark: 'Gate left.\nDog.' };
    const wish = { words, figures, site: 'https://range.example', json: true };
    const today = new Date('2026-11-28T12:00:00Z');
    for (const code of codes.slice(0, 10)) {
      const { text, json } = jobOf(code, caller);
      const [fromText, more] = jobLines(text, current, today, wish);
      expect(more).toBeUndefined();
      expect(jobLines(mailed(json), current, today, wish)).toEqual([fromText]);
      const told = { code, caller, clerk: 'Ann', called: '2026-11-28T14:05', version: 2 };
      expect(JSON.parse(fromText?.text ?? '')).toMatchObject(told);
      const [said] = jobLines(json, current, today, { ...wish, json: false });
      expect(handOvers(said?.text ?? '', labels)[0]?.caller).toEqual(caller);
    }
    // Two problems of one visit are one job: the urgency of the worse, what to load for both.
    const [both] = jobLines(`${first} + ${second}`, current, today, wish);
    const [one, two] = [first, second].map((code) => jobOf(code, {}).job);
    const parts = new Set([one, two].flatMap((job) => job?.parts.map(({ part }) => part)));
    const job = jobSchema.parse(JSON.parse(both?.text ?? ''));
    expect(job).toMatchObject({ code: first, also: [second] });
    expect(job.link).toContain(second);
    expect(parts.size).toBeGreaterThan(0);
    expect(new Set(job.parts.map(({ part }) => part))).toEqual(parts);
    expect([one?.urgency, two?.urgency]).toContain(job.urgency);
  });

  test('several jobs in one text, and a code on a line of its own beside them', () => {
    const [third = ''] = codes.slice(2);
    const two = [first, second].map((code, i) => jobOf(code, { name: `N${String(i)}` }));
    const texts = `${two.map(({ text }) => text).join('\n\n')}\n\n${third}\n`;
    const list = JSON.stringify(two.map(({ job }) => job));
    const of = (text: string) => {
      const found = entriesOf(text, codebooks, labels);
      return found.ok ? found.value : undefined;
    };
    expect(of(texts)?.entries.map(({ text }) => text)).toEqual([first, second, third]);
    expect(of(texts)?.columns).toContain('Name');
    expect(of(list)?.entries.map(({ text }) => text)).toEqual([first, second]);
    expect(of(list)?.entries.map(({ others }) => others[0])).toEqual(['N0', 'N1']);
  });

  test('a job without a code is handed over too', () => {
    const text = 'Job: TODAY: The oven will not heat\nName: Ann\nCode: no code yet\n';
    expect(handOvers(mailed(text), labels)).toEqual([
      { job: 'TODAY: The oven will not heat', caller: { name: 'Ann' }, code: '' },
    ]);
  });
});

describe('the code in any text', () => {
  test.each([
    ['a line', `Hello,\nCode: ${first}\nBye`],
    ['a line, read back', `code : ${first.toLowerCase()} (read back, correct)`],
    ['a line broken at a hyphen', `Code: ${first.slice(0, 10)}\n  ${first.slice(10)}`],
    ['a link', `See https://range.example/preview/#c=${first} please.`],
    ['JSON on one line', `x {"a":{"b":1},"code":"${first}"} y`],
    ['among words', `the caller gave me ${first}, she will be home at noon`],
    [
      'with spaces, words of four letters around',
      `take this ${first.replaceAll('-', ' ')} from them`,
    ],
  ])('%s', (_, text) => {
    expect(readPasted(text, codebooks, labels).reading).toMatchObject({
      kind: 'exact',
      code: first,
    });
  });

  test('a damaged one among words is a proposal; none is refused as before', () => {
    const bad = damaged(first, 2);
    for (const text of [`Code: ${bad}`, `Here: ${bad}.`])
      expect(readPasted(text, codebooks, labels).reading).toMatchObject({
        kind: 'repaired',
        code: first,
      });
    expect(readPasted('Hello: there', codebooks, labels).reading.kind).toBe('refused');
    expect(readPasted('{"code":7}', codebooks, labels).reading.kind).toBe('refused');
  });

  test('a line that a mail program broke goes on', () => {
    const text = `Job: x\nAddress: 12 Long Lane,\n  Apartment: 3\nName: Ann\n\nCode: ${first}`;
    expect(handOvers(text, labels)[0]?.caller).toEqual({
      address: '12 Long Lane, Apartment: 3',
      name: 'Ann',
    });
  });

  test('hostile texts are read in bounded time', () => {
    const long = ['{'.repeat(1e6), '{"'.repeat(5e5), 'abcd '.repeat(2e5), '#c='.repeat(3e5)];
    for (const text of long)
      expect(readPasted(text, codebooks, labels).reading.kind).toBe('refused');
  });
});

test('no question or detail is called like a line that is read back', () => {
  const lines = new Set(Object.values(labels).map((label) => label.toLowerCase()));
  const names = [
    ...guides().flatMap((guide) =>
      [...guide.nodes.values()].map((node) => nodeWords(words, guide, node).short),
    ),
    ...details().map(({ id }) => detailName(words, 'preview', id)),
  ];
  expect(names.length).toBeGreaterThan(100);
  expect(names.filter((name) => lines.has(name.toLowerCase()))).toEqual([]);
});

test('two codes of one visit are one job, and two entries of one caller', () => {
  const caller = { name: 'Ann Lane', phone: '555-0100' };
  const [one, two] = [jobOf(first, caller), jobOf(second, caller)];
  const job = { ...one.job, also: [two.job.code ?? ('' as never)] };
  jobSchema.parse(JSON.parse(JSON.stringify(job)));
  for (const text of [
    jobText(words, one.view, job),
    JSON.stringify(job),
    joined([first, second]),
  ]) {
    const { reading, also } = readPasted(text, codebooks, labels);
    expect(reading).toMatchObject({ kind: 'exact', code: first });
    expect(also).toEqual([second]);
    const entries = entriesOf(text, codebooks, labels);
    expect(entries.ok && entries.value.entries.map(({ text: code }) => code)).toEqual([
      first,
      second,
    ]);
  }
});

test('a route saved as JSON is a route again: codes, callers, visits without a code, broken lines', () => {
  const broken = damaged(codes[2] ?? '', 1);
  const rows = [`Name,Phone,Code`, `Ann Lane,555-0100,${first}`, `Bo,555-0101,no code yet`];
  const found = entriesOf([...rows, `Cy,555-0102,${broken}`].join('\n'), codebooks, labels);
  if (!found.ok) throw new Error(found.error.code);
  const named = { Name: labels.name, Phone: labels.phone };
  const json = {
    version: 2,
    visits: found.value.entries.slice(0, 2).map(({ row, text, others }) => ({
      ...{ row, code: text === first ? text : null },
      columns: { [named.Name]: others[0], [named.Phone]: others[1] },
    })),
    unread: [{ row: 3, text: broken, columns: { [named.Name]: 'Cy' } }],
  };
  const back = handOvers(JSON.stringify(json), labels);
  expect(back).toEqual([
    { code: first, caller: { name: 'Ann Lane', phone: '555-0100' } },
    { code: '', caller: { name: 'Bo', phone: '555-0101' } },
    { code: broken, caller: { name: 'Cy' } },
  ]);
});
