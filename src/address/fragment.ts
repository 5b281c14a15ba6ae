import {
  MOST,
  NAME,
  hashOf,
  parseRaw,
  withoutHash,
  type FragmentKey,
  type RawFragment,
} from './grammar.ts';
import { formatJourney, parseJourney } from './journey-text.ts';
import { formatTimer, parseTimer, type RunningTimer } from './timer.ts';
import type { Given, Journey } from '../guide/types.ts';

/** What was wrong with a fragment; what could be read of it was read. */
export type FragmentProblem =
  | { readonly code: 'fragment-too-long'; readonly length: number; readonly most: number }
  /** Not in the part's form, wholly or from some place on. */
  | { readonly code: 'part-unreadable'; readonly part: FragmentKey }
  /** Control characters or marks that turn the direction of writing were taken out. */
  | { readonly code: 'text-cleaned'; readonly part: FragmentKey }
  | { readonly code: 'text-cut'; readonly part: FragmentKey; readonly most: number };

/** Everything an address carries after `#`. An absent part is absent, never empty. */
export interface Fragment {
  /** A tap that came before the page's script had run. */
  readonly earlyTap?: Given;
  /** The guide the journey began in, where the page may be another guide's. */
  readonly guide?: string;
  readonly journey: Journey;
  /** The display's text as shown. */
  readonly error?: string;
  /** Detail → answer. */
  readonly details: Readonly<Record<string, string>>;
  /** The day the note was made, `2026-11-25`. */
  readonly made?: string;
  readonly timer?: RunningTimer;
  /** A note code as typed or scanned, not yet read. */
  readonly code?: string;
  readonly model?: string;
  readonly remark?: string;
  /** Under which name the tab keeps model and remark, so that they need not stand here. */
  readonly stored?: string;
}

/** Characters of each free text. A code is at most some 60 with its hyphens. */
const TEXT_MOST = { e: 120, c: 200, m: 60, r: 500 } as const;
const DETAILS_MOST = 64;
const STORED = /^[a-z0-9]{1,16}$/;

/**
 * Control characters and marks that turn the direction of writing. Broken surrogate pairs
 * do not come this far: URLSearchParams replaces them by U+FFFD.
 */
const UNWANTED = /[\p{Cc}\p{Bidi_Control}\u2028\u2029\ufeff]+/gu;

/**
 * Text from an address made fit to show: unwanted characters out, at most `most`
 * characters. It is still text, never markup.
 */
function clean(text: string, part: keyof typeof TEXT_MOST, problems: FragmentProblem[]): string {
  const most = TEXT_MOST[part];
  // Line breaks and tabs part words; the rest only hides or turns them.
  const cleaned = text.replace(/[\t\n\r\u2028\u2029]+/gu, ' ').replace(UNWANTED, '');
  if (cleaned !== text) problems.push({ code: 'text-cleaned', part });
  const characters = [...cleaned];
  if (characters.length > most) problems.push({ code: 'text-cut', part, most });
  return characters.slice(0, most).join('').trim();
}

function parseDetails(text: string): { details: Record<string, string>; whole: boolean } {
  const pairs = text.split('~', DETAILS_MOST).map((pair) => pair.split('.', 3));
  const good = pairs.filter(
    ([id = '', answer = '', more]) => more === undefined && NAME.test(id) && NAME.test(answer),
  );
  return {
    details: Object.fromEntries(good.map(([id = '', answer = '']) => [id, answer])),
    whole: good.length === pairs.length,
  };
}

function isDay(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  if (!/^\d{4}-\d\d-\d\d$/.test(text) || Number.isNaN(day.getTime())) return false;
  // A 30th of February would be read as a day in March.
  return day.toISOString().startsWith(text);
}

/**
 * Read an address's fragment, with or without its `#`. Never throws: what is not
 * understood is left out and reported. Names are of the right form only; whether the
 * guide has them is for `walk` to say. Keys it does not know are passed over.
 */
export function parseFragment(hash: string): {
  readonly fragment: Fragment;
  readonly problems: readonly FragmentProblem[];
} {
  const problems: FragmentProblem[] = [];
  const { length } = withoutHash(hash);
  if (length > MOST) problems.push({ code: 'fragment-too-long', length, most: MOST });
  const raw = parseRaw(hash);

  /** A value, where its key is there and the value has the key's form. */
  function read<Value>(
    part: FragmentKey,
    parse: (text: string) => Value | undefined,
  ): Value | undefined {
    const text = raw[part];
    const value = text === undefined ? undefined : parse(text);
    if (text !== undefined && value === undefined) problems.push({ code: 'part-unreadable', part });
    return value;
  }
  const ofForm = (form: RegExp) => (text: string) => (form.test(text) ? text : undefined);
  function text(part: keyof typeof TEXT_MOST): string | undefined {
    return clean(raw[part] ?? '', part, problems) || undefined;
  }

  const [earlyTap] = read('a', (one) => inFull(parseJourney(one), one, 1)) ?? [];
  const guide = read('g', ofForm(NAME));
  const journey = parseJourney(raw.j);
  read('j', (all) => inFull(journey, all));
  const { details, whole } = parseDetails(raw.d ?? '');
  read('d', () => whole || undefined);
  const made = read('on', (day) => (isDay(day) ? day : undefined));
  const timer = read('w', parseTimer);
  const stored = read('k', ofForm(STORED));
  const [error, code, model, remark] = [text('e'), text('c'), text('m'), text('r')];
  const fragment: Fragment = {
    ...(earlyTap === undefined ? {} : { earlyTap }),
    ...(guide === undefined ? {} : { guide }),
    journey,
    details,
    ...(error === undefined ? {} : { error }),
    ...(made === undefined ? {} : { made }),
    ...(timer === undefined ? {} : { timer }),
    ...(code === undefined ? {} : { code }),
    ...(model === undefined ? {} : { model }),
    ...(remark === undefined ? {} : { remark }),
    ...(stored === undefined ? {} : { stored }),
  };
  return { fragment, problems };
}

/** A journey that is all its text says, and of no more answers than allowed. */
function inFull(journey: Journey, text: string, most = Infinity): Journey | undefined {
  return formatJourney(journey) === text && journey.length <= most ? journey : undefined;
}

function rawOf(fragment: Fragment): RawFragment {
  const { earlyTap, guide, journey, error, details, made, timer, code, model, remark, stored } =
    fragment;
  return {
    a: earlyTap && formatJourney([earlyTap]),
    g: guide,
    j: formatJourney(journey),
    e: error,
    d: Object.entries(details)
      .map((pair) => pair.join('.'))
      .join('~'),
    on: made,
    w: timer && formatTimer(timer),
    c: code,
    m: model,
    r: remark,
    k: stored,
  };
}

/** Write a fragment without its `#`; '' where there is nothing to write. */
export function formatFragment(fragment: Fragment): string {
  return withoutHash(fragmentHash(fragment));
}

/** A fragment as a link's `#…`, or '' where there is nothing to write. */
export function fragmentHash(fragment: Fragment): string {
  return hashOf(rawOf(fragment));
}
