/**
 * A call handed over as text, read back: a job's text or JSON as this project writes it (`job.ts`),
 * a link to the preview, or a bare code, each with an e-mail around it. The reader of everything
 * that people paste.
 */
import { parseFragment } from '../address/fragment.ts';
import { defined } from '../defined.ts';
import { isRecord } from '../guide/shape.ts';
import type { Codebooks } from '../note/codebook.ts';
import { readCode } from '../note/read.ts';
import type { Reading } from '../note/types.ts';
import { callerFields, oneLine, tidyCaller, type Caller, type CallerField } from './job.ts';

/** Lines at the top of a job's text, besides the caller's: what each of them says stands there. */
export const jobLines = [
  ...(['job', 'error', 'outcome', 'because', 'breaker', 'flags'] as const),
  ...(['called', 'answered', 'clerk', 'parts', 'code', 'link'] as const),
];
type Line = CallerField | (typeof jobLines)[number];

/** What each line is called in the language of whoever pastes. `none` stands for a code not yet there. */
export type Labels = Readonly<Record<Line | 'none', string>>;

/** What a text hands over; nothing of it is trusted more than what somebody typed. */
export interface HandOver {
  /** A code as given, not yet read; '' where there is none yet. */
  readonly code: string;
  readonly caller: Caller;
  /** The complaint and its urgency, in words. */
  readonly job?: string;
  readonly error?: string;
  /** Time of the call by the firm's clock, `2026-11-28T14:05`. */
  readonly called?: string;
  /** Time of the last answer, in the same form. */
  readonly answered?: string;
  /** Who took the call. */
  readonly clerk?: string;
}

/** Most characters looked at: some hundred jobs. */
const MOST = 1_000_000;
/** Most characters of one line's text; a remark has at most 500. */
const LINE_MOST = 600;
/** Most groups of four that a code has. */
const GROUPS = 15;
/** Most codes that are tried in one text: damaged ones take half a millisecond each. */
const TRIES = 100;

const LINES = /\r\n?|[\n\u2028\u2029]/u;
/** What mail programs put before the lines they quote. */
const QUOTED = /^[\s>|\u2066-\u2069]+/u;
/** What follows the code in its line: whether it was read back. */
const AFTER = /\s*[(\uff08].*$/u;

/** A minute as a job has it or as its text says it, with a space. */
const minuteIn = (called: string): string | undefined =>
  /^\d{4}-\d\d-\d\d[T ]\d\d:\d\d$/.test(called) ? called.replace(' ', 'T') : undefined;

type Texts = Partial<Record<Line, string>>;

function finished(texts: Texts, labels: Labels): HandOver {
  const { job, error, clerk, called = '', answered = '', code: given = '' } = texts;
  const code = given.replace(AFTER, '').trim();
  const none = code.toLowerCase() === labels.none.toLowerCase();
  return {
    code: none ? '' : code,
    caller: tidyCaller(texts),
    ...defined({ job, error, clerk, called: minuteIn(called), answered: minuteIn(answered) }),
  };
}

/** Jobs as text: lines `label: text`, each job from its first line on. */
function fromLines(text: string, labels: Labels): HandOver[] {
  const known = new Map<string, Line>(
    [...callerFields, ...jobLines].map((line) => [labels[line].toLowerCase(), line]),
  );
  const jobs: Texts[] = [];
  /** The line that goes on below, where a mail program has broken it. */
  let open: Line | undefined;
  for (const raw of text.split(LINES)) {
    const line = raw.replace(QUOTED, '');
    const colon = line.search(/[:\uff1a]/u);
    const name = colon < 0 ? undefined : known.get(line.slice(0, colon).trim().toLowerCase());
    const last = jobs.at(-1);
    if (name === undefined) {
      if (line.trim() === '') open = undefined;
      if (open !== undefined && last)
        last[open] = oneLine(`${last[open] ?? ''} ${line}`, LINE_MOST);
      continue;
    }
    const said = oneLine(line.slice(colon + 1), LINE_MOST);
    const begins = !last || name === 'job' || (name === 'code' && last.code !== undefined);
    const texts: Texts = begins ? {} : last;
    if (begins) jobs.push(texts);
    const before = texts[name];
    if (before === undefined) texts[name] = said;
    else if (name === 'remark') texts[name] = `${before}\n${said}`;
    // The first line of a name counts; the code is whole, but where it breaks at a hyphen.
    const goesOn = before === undefined && (name !== 'code' || /[-+]$/.test(said));
    open = goesOn || name === 'remark' ? name : undefined;
  }
  return jobs.map((texts) => finished(texts, labels));
}

/** The JSON objects in a text, whatever stands around them; those within one go with it. */
function* objectsIn(given: string): Generator {
  // JSON has line ends between its words only: those within were put there on the way.
  const text = given.replaceAll(/[\r\n][\s>]*/gu, ' ');
  let [from, depth, quoted] = [-1, 0, false];
  for (let at = 0; at < text.length; at += 1) {
    const sign = text.charAt(at);
    if (quoted) {
      if (sign === '\\') at += 1;
      else if (sign === '"') quoted = false;
    } else if (sign === '"') quoted = depth > 0;
    else if (sign === '{') {
      if (depth === 0) from = at;
      depth += 1;
    } else if (sign === '}' && depth > 0) {
      depth -= 1;
      if (depth > 0) continue;
      try {
        yield JSON.parse(text.slice(from, at + 1)) as unknown;
      } catch {
        // Not JSON: braces of somebody's sentence.
      }
    }
  }
}

const textIn = (record: Readonly<Record<string, unknown>>, name: string): string | undefined => {
  const value = Object.hasOwn(record, name) ? record[name] : undefined;
  return typeof value === 'string' ? value : undefined;
};

const alsoIn = ({ also }: Readonly<Record<string, unknown>>): string[] =>
  Array.isArray(also) ? also.filter((one) => typeof one === 'string') : [];

/** The caller that a list's columns tell of, as a route's JSON has them. */
const callerOf = (columns: Readonly<Record<string, unknown>>, labels: Labels): unknown =>
  Object.fromEntries(callerFields.map((field) => [field, columns[labels[field]]]));

/** A job, or the visits and the lines yet to fix of a route. */
function fromObject(value: unknown, labels: Labels): HandOver[] {
  if (!isRecord(value)) return [];
  const { visits, unread = [], columns } = value;
  if (Array.isArray(visits) && Array.isArray(unread))
    return [visits, unread].flat().flatMap((one: unknown) => fromObject(one, labels));
  const caller = isRecord(columns) ? callerOf(columns, labels) : value['caller'];
  const code = textIn(value, 'code') ?? (isRecord(columns) ? textIn(value, 'text') : undefined);
  if (code === undefined && !isRecord(caller)) return [];
  const [error, clerk] = ['error', 'clerk'].map(
    (name) => oneLine(textIn(value, name) ?? '', LINE_MOST) || undefined,
  );
  const [called, answered] = ['called', 'answered'].map((name) =>
    minuteIn(textIn(value, name) ?? ''),
  );
  return [
    {
      ...{
        code: joined([code ?? '', ...alsoIn(value)].map((one) => one.trim()).filter(Boolean)),
        caller: isRecord(caller) ? tidyCaller(caller) : {},
      },
      ...defined({ error, clerk, called, answered }),
    },
  ];
}

/** Links that hold a code, and what else they hold. */
function fromLinks(text: string): HandOver[] {
  return [...text.matchAll(/#[^\s"'<>]+/gu)].flatMap(([hash]) => {
    const { code, model, remark, error } = parseFragment(hash).fragment;
    if (code === undefined) return [];
    return [{ code, caller: tidyCaller(defined({ model, remark })), ...defined({ error }) }];
  });
}

/** Whether somebody could be visited for it, code or not. */
const isJob = ({ job, caller }: HandOver): boolean =>
  job !== undefined || Object.keys(caller).length > 0;

/**
 * All that a text hands over, in its order; none where it has no such line, object or link.
 * Time grows with the text's length, of which no more than a million characters are looked at.
 */
export function handOvers(given: string, labels: Labels): readonly HandOver[] {
  const text = given.slice(0, MOST);
  // A caller's words may hold braces, no line of JSON a label: lines come first.
  const lines = fromLines(text, labels).filter((one) => one.code !== '' || isJob(one));
  if (lines.length > 0) return lines;
  const objects = [...objectsIn(text)].flatMap((one) => fromObject(one, labels));
  return objects.length > 0 ? objects : fromLinks(text);
}

/** Those of them that somebody could be visited for, code or not: more than codes and links. */
export const jobsIn = (text: string, labels: Labels): readonly HandOver[] =>
  handOvers(text, labels).filter(isJob);

/** Groups of four joined by hyphens, or by spaces too; what stands in a sentence. */
const JOINED =
  /(?<![\p{L}\p{N}])[0-9A-Z]{4}(?:[-\u2010-\u2015][\s>]*[0-9A-Z]{3,5})+(?![\p{L}\p{N}])/giu;
const SPACED =
  /(?<![\p{L}\p{N}])[0-9A-Z]{4}(?:[-\s>\u2010-\u2015]+[0-9A-Z]{4}){3,}(?![\p{L}\p{N}])/giu;

/** A code among words: one joined by hyphens however damaged, or an exact one with spaces. */
function amongWords(text: string, codebooks: Codebooks): Reading | undefined {
  const joined = [...text.matchAll(JOINED)]
    .slice(0, TRIES)
    .map(([found]) => readCode(plain(found), codebooks));
  const sure = joined.find(({ kind }) => kind === 'exact');
  if (sure) return sure;
  let tries = 0;
  for (const [found] of text.matchAll(SPACED)) {
    const groups = plain(found).split(/\P{ASCII}|[-\s]+/u);
    // Words of four letters around a code look like groups of it.
    for (let from = 0; from < groups.length; from += 1)
      for (let to = Math.min(groups.length, from + GROUPS); to >= from + 4; to -= 1) {
        tries += 1;
        if (tries > TRIES) return joined[0];
        const reading = readCode(groups.slice(from, to).join('-'), codebooks);
        if (reading.kind === 'exact') return reading;
      }
  }
  return joined.find(({ kind }) => kind === 'repaired') ?? joined[0];
}

const plain = (found: string): string => found.replaceAll('>', ' ');

/** Codes of one visit stand in one line, joined by plus signs. */
export const joined = (codes: readonly string[]): string => codes.join(' + ');
/** Each has at least three whole groups, whatever else is wrong with it. */
const SEVERAL = /^[\w?\s-]{12,}(?: \+ [\w?\s-]{12,})+$/u;
/** The codes of a line; the line itself where it has one or none. */
export const codesIn = (text: string): readonly string[] =>
  SEVERAL.test(text) ? text.split(' + ').map((one) => one.trim()) : [text];

/** Of a visit's other codes those that read as they are. */
export const exactOf = (codes: readonly string[], codebooks: Codebooks) =>
  codes.map((code) => readCode(code, codebooks)).filter((one) => one.kind === 'exact');

/** What somebody typed or pasted: the code in it, and what came along. */
export interface Pasted {
  readonly reading: Reading;
  /** Codes of the same visit's other problems, as they were given. */
  readonly also?: readonly string[];
  /** Undefined where nothing but a code was given. */
  readonly came?: HandOver;
}

/**
 * Find and read the code of any text. A text that reads as a code, damaged or spelled out too, is
 * that code; else the first job in it that reads, else a code among its words. What is refused is
 * refused for the code that was found, or for the whole text where none was.
 */
export function readPasted(text: string, codebooks: Codebooks, labels: Labels): Pasted {
  const [first = text, ...others] = codesIn(text);
  const whole = readCode(first, codebooks);
  if (others.length > 0) return { reading: whole, also: others };
  if (whole.kind !== 'refused') return { reading: whole };
  const jobs = handOvers(text, labels).slice(0, TRIES);
  const found = jobs.map((came): Pasted => {
    const [code = '', ...also] = codesIn(came.code);
    return { reading: readCode(code, codebooks), came, ...(also.length > 0 ? { also } : {}) };
  });
  const best =
    found.find(({ reading }) => reading.kind === 'exact') ??
    found.find(({ reading }) => reading.kind === 'repaired') ??
    found[0];
  if (best) return best;
  const among = amongWords(text.slice(0, MOST), codebooks);
  // Nothing but signs of a code: what is refused is all of it, not the part that looks whole.
  const bare = !['bad-symbol', 'bad-word', 'too-long'].includes(whole.problem.code);
  return { reading: among && !(bare && among.kind === 'refused') ? among : whole };
}
