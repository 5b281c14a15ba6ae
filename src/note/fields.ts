/**
 * A note as one number, and back. Digits from the least significant: release,
 * guide, day, shape, the journey's rank, then the details and the display's text
 * where the shape says so. Each number has at most one note: anything else is refused.
 */
import { fail, ok, type Result } from '../result.ts';
import { dayRadix } from './day.ts';
import {
  alphabetOf,
  alphabets,
  isTidy,
  longestError,
  numberToText,
  textToNumber,
  tidyErrorText,
  unencodable,
} from './error-text.ts';
import type { Codebook, Codebooks } from './codebook.ts';
import { type Digit, pack, type Unpacker, unpacker } from './number.ts';
import type { Field, Note, ReadProblem, WriteProblem } from './types.ts';
import { rankOf, unrank } from './edges.ts';

/**
 * A release takes one digit of this radix while below it: digit d is release d + 1.
 * The top digit means "15 more, see the next digit", so releases never run out.
 */
const releaseRadix = 16n;
const releasesPerDigit = 15;

/** Shape: details given or not, times no text, or a text in one of the alphabets. */
const shapeRadix = BigInt(2 * (1 + alphabets.length));

/** The number of a note. */
export function noteToNumber(note: Note, codebooks: Codebooks): Result<bigint, WriteProblem> {
  const { release, day, error } = note;
  const codebook = codebooks.get(release);
  if (!codebook) return fail({ code: 'unknown-release', release, known: [...codebooks.keys()] });
  const index = codebook.guides.findIndex(({ id }) => id === note.guide);
  const guide = codebook.guides[index];
  if (!guide) return fail({ code: 'unknown-guide', guide: note.guide, release });
  if (!Number.isInteger(day) || day < 0 || day >= dayRadix) return fail({ code: 'bad-day', day });
  const rank = rankOf(guide, note.journey);
  if (!rank.ok) {
    const { step } = rank.error;
    const given = note.journey[step];
    return fail({ code: 'not-a-journey', step, at: given?.at ?? '', answer: given?.answer ?? '' });
  }
  const details = detailDigits(codebook, note.details);
  if (!details.ok) return details;
  const textProblem = error === '' ? undefined : textTrouble(error);
  if (textProblem) return fail(textProblem);
  const detailed = details.value.some(({ digit }) => digit !== 0n);
  const kind = error === '' ? 0 : 1 + alphabetOf(error);
  const digits: Digit[] = [
    ...releaseDigits(release),
    { digit: BigInt(index), radix: BigInt(codebook.guides.length) },
    { digit: BigInt(day), radix: BigInt(dayRadix) },
    { digit: BigInt(2 * kind + (detailed ? 1 : 0)), radix: shapeRadix },
    { digit: rank.value, radix: guide.first.journeys },
    ...(detailed ? details.value : []),
  ];
  return ok(pack(digits, kind === 0 ? 0n : textToNumber(error, alphabets[kind - 1] ?? '')));
}

/** The note of a number. */
export function numberToNote(number: bigint, codebooks: Codebooks): Result<Note, ReadProblem> {
  const left = unpacker(number);
  const release = takeRelease(left);
  const codebook = codebooks.get(release);
  if (!codebook) return fail({ code: 'unknown-release', release, known: [...codebooks.keys()] });
  const guide = codebook.guides[Number(left.take(BigInt(codebook.guides.length)))];
  if (!guide) return impossible('guide');
  const day = Number(left.take(BigInt(dayRadix)));
  const shape = Number(left.take(shapeRadix));
  const journey = unrank(guide, left.take(guide.first.journeys));
  if (!journey) return impossible('journey');
  const detailed = shape % 2 === 1;
  const details = detailed ? takeDetails(codebook, left) : {};
  // The flag with nothing behind it would be a second number for the same note.
  if (detailed && Object.keys(details).length === 0) return impossible('details');
  const error = textOf(left.rest(), (shape - (shape % 2)) / 2);
  if (error === undefined) return impossible('error');
  return ok({ release, guide: guide.id, journey, day, details, error });
}

/** Of which of a release's guides a number is, told without the codebook; undefined for another release's. */
export function guideOfNumber(
  number: bigint,
  release: number,
  guides: readonly string[],
): string | undefined {
  const left = unpacker(number);
  return takeRelease(left) === release
    ? guides[Number(left.take(BigInt(guides.length)))]
    : undefined;
}

function impossible(field: Field): Result<never, ReadProblem> {
  return fail({ code: 'impossible', field });
}

function releaseDigits(release: number): Digit[] {
  const more = Math.floor((release - 1) / releasesPerDigit);
  const last = (release - 1) % releasesPerDigit;
  const values = [...Array<number>(more).fill(releasesPerDigit), last];
  return values.map((value) => ({ digit: BigInt(value), radix: releaseRadix }));
}

/** Ends because the number shrinks: 0 is a last digit. */
function takeRelease(left: Unpacker): number {
  let below = 0;
  for (;;) {
    const digit = Number(left.take(releaseRadix));
    if (digit < releasesPerDigit) return below + digit + 1;
    below += releasesPerDigit;
  }
}

/** One digit a detail of the codebook: 0 for unanswered, else 1 + the answer's place. */
function detailDigits(
  codebook: Codebook,
  given: Readonly<Record<string, string>>,
): Result<Digit[], WriteProblem> {
  const unknown = Object.keys(given).find(
    (id) => !codebook.details.some((detail) => detail.id === id),
  );
  if (unknown !== undefined) return fail({ code: 'unknown-detail', detail: unknown });
  const digits: Digit[] = [];
  for (const { id, answers } of codebook.details) {
    const answer = Object.hasOwn(given, id) ? given[id] : undefined;
    const place = answer === undefined ? 0 : answers.indexOf(answer) + 1;
    if (answer !== undefined && place === 0) {
      return fail({ code: 'unknown-detail-answer', detail: id, answer });
    }
    digits.push({ digit: BigInt(place), radix: BigInt(answers.length + 1) });
  }
  return ok(digits);
}

function takeDetails(codebook: Codebook, left: Unpacker): Record<string, string> {
  const details: Record<string, string> = {};
  for (const { id, answers } of codebook.details) {
    const answer = answers[Number(left.take(BigInt(answers.length + 1))) - 1];
    if (answer !== undefined) details[id] = answer;
  }
  return details;
}

function textTrouble(text: string): WriteProblem | undefined {
  const characters = unencodable(text);
  if (characters.length > 0) return { code: 'error-characters', characters };
  if (text.length > longestError) {
    return { code: 'error-too-long', length: text.length, most: longestError };
  }
  return isTidy(text) ? undefined : { code: 'error-untidy', tidy: tidyErrorText(text) };
}

/** '' for no text and nothing left over; undefined for what no text is written as. */
function textOf(rest: bigint, kind: number): string | undefined {
  const alphabet = alphabets[kind - 1];
  if (alphabet === undefined) return rest === 0n ? '' : undefined;
  const text = numberToText(rest, alphabet);
  const canonical =
    text !== undefined && text !== '' && isTidy(text) && alphabetOf(text) === kind - 1;
  return canonical ? text : undefined;
}
