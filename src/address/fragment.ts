import { NAME, NODE_NAME, formatJourney, parseJourney } from './journey-text.ts';
import type { Journey, NodeId } from '../guide/types.ts';

/** A count-down that was running when the address was written. */
export interface RunningTimer {
  readonly node: NodeId;
  /** Seconds since 1970-01-01 UTC by the device's clock. */
  readonly end: number;
  /** Up to when its time is surely gone by, in the same seconds; an address of old does not say. */
  readonly counted?: number;
}

/** A part of the fragment, by its key in the address. */
export type Part = 'g' | 'j' | 'e' | 'd' | 'on' | 'w' | 'c' | 'm' | 'r' | 'k';

/** What was wrong with a fragment; what could be read of it was read. */
export type FragmentProblem =
  | { readonly code: 'fragment-too-long'; readonly length: number; readonly most: number }
  /** Not in the part's form, wholly or from some place on. */
  | { readonly code: 'part-unreadable'; readonly part: Part }
  /** Control characters or marks that turn the direction of writing were taken out. */
  | { readonly code: 'text-cleaned'; readonly part: Part }
  | { readonly code: 'text-cut'; readonly part: Part; readonly most: number };

/** Everything an address carries after `#`. An absent part is absent, never empty. */
export interface Fragment {
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
  readonly kept?: string;
}

/** Characters of each free text. A code is at most some 60 with its hyphens. */
const TEXT_MOST = { e: 120, c: 200, m: 60, r: 500 } as const;
/**
 * Bytes are bounded first, so that hostile addresses cost nothing to refuse. A character is up to
 * 12 bytes (UTF-8, percent-encoded): all free texts are 10,560, and a journey and details fit beside.
 */
const MOST = 16_384;
const DETAILS_MOST = 64;
const KEPT = /^[a-z0-9]{1,16}$/;

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

function parseTimer(text: string): RunningTimer | undefined {
  const [node = '', ...times] = text.split('.', 4);
  // Seven digits in base 36 reach the year 4453.
  const right = NODE_NAME.test(node) && times.every((time) => /^[1-9a-z][0-9a-z]{0,6}$/.test(time));
  const [end, counted, more] = times.map((time) => Number.parseInt(time, 36));
  if (!right || end === undefined || more !== undefined) return undefined;
  return { node: node as NodeId, end, ...(counted === undefined ? {} : { counted }) };
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
  const whole = hash.startsWith('#') ? hash.slice(1) : hash;
  if (whole.length > MOST)
    problems.push({ code: 'fragment-too-long', length: whole.length, most: MOST });
  const values = new URLSearchParams(whole.slice(0, MOST));
  const unreadable = (part: Part): void => void problems.push({ code: 'part-unreadable', part });

  function text(part: keyof typeof TEXT_MOST): string | undefined {
    return clean(values.get(part) ?? '', part, problems) || undefined;
  }

  const guideText = values.get('g') ?? '';
  const guide = NAME.test(guideText) ? guideText : undefined;
  if (guideText !== '' && guide === undefined) unreadable('g');

  const journeyText = values.get('j') ?? '';
  const journey = parseJourney(journeyText);
  if (formatJourney(journey) !== journeyText) unreadable('j');

  const detailsText = values.get('d') ?? '';
  const { details, whole: allDetails } = parseDetails(detailsText);
  if (detailsText !== '' && !allDetails) unreadable('d');

  const madeText = values.get('on') ?? '';
  const made = isDay(madeText) ? madeText : undefined;
  if (madeText !== '' && made === undefined) unreadable('on');

  const timerIn = values.get('w') ?? '';
  const timer = parseTimer(timerIn);
  if (timerIn !== '' && timer === undefined) unreadable('w');

  const keptText = values.get('k') ?? '';
  const kept = KEPT.test(keptText) ? keptText : undefined;
  if (keptText !== '' && kept === undefined) unreadable('k');

  const [error, code, model, remark] = [text('e'), text('c'), text('m'), text('r')];
  const fragment: Fragment = {
    ...(guide === undefined ? {} : { guide }),
    journey,
    details,
    ...(error === undefined ? {} : { error }),
    ...(made === undefined ? {} : { made }),
    ...(timer === undefined ? {} : { timer }),
    ...(code === undefined ? {} : { code }),
    ...(model === undefined ? {} : { model }),
    ...(remark === undefined ? {} : { remark }),
    ...(kept === undefined ? {} : { kept }),
  };
  return { fragment, problems };
}

function timerText({ node, end, counted }: RunningTimer): string {
  const times = counted === undefined ? [end] : [end, counted];
  return [node, ...times.map((time) => time.toString(36))].join('.');
}

/** A slash may stand in a fragment as it is (RFC 3986, section 3.5). */
function encoded(value: string): string {
  return encodeURIComponent(value.toWellFormed()).replaceAll('%2F', '/');
}

/** Write a fragment without its `#`; '' where there is nothing to write. */
export function formatFragment(fragment: Fragment): string {
  const { guide, journey, error, details, made, timer, code, model, remark, kept } = fragment;
  const parts: readonly (readonly [Part, string])[] = [
    ['g', guide ?? ''],
    ['j', formatJourney(journey)],
    ['e', error ?? ''],
    [
      'd',
      Object.entries(details)
        .map((pair) => pair.join('.'))
        .join('~'),
    ],
    ['on', made ?? ''],
    ['w', timer ? timerText(timer) : ''],
    ['c', code ?? ''],
    ['m', model ?? ''],
    ['r', remark ?? ''],
    ['k', kept ?? ''],
  ];
  return parts
    .filter(([, value]) => value !== '')
    .map(([key, value]) => `${key}=${encoded(value)}`)
    .join('&');
}
