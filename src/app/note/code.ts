/** From the address's parts to the note code and the address a technician opens. */
import { defined } from '../../defined.ts';
import type { Fragment } from '../../address/fragment.ts';
import { fragmentHash } from '../../address/fragment.ts';
import type { GuideId } from '../../guide/types.ts';
import { dayOf } from '../../note/day.ts';
import { longestError, tidyErrorText, unencodable } from '../../note/error-text.ts';
import type { Codebook, Codebooks } from '../../note/codebook.ts';
import type { Note, NoteCode } from '../../note/types.ts';
import { writeCode } from '../../note/write.ts';

/** Why the code does not hold the display's text; the long form still does. */
export type LeftOut =
  | { readonly code: 'characters'; readonly characters: readonly string[] }
  | { readonly code: 'too-long'; readonly length: number; readonly most: number };

export interface Coded {
  readonly code: NoteCode;
  readonly leftOut?: LeftOut;
}

/** The day of a date where the reader is, `2026-11-25`. */
export function localDay(date: Date): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** Details the codebook knows; an address may hold anything. */
export function knownDetails(
  codebook: Codebook,
  details: Fragment['details'],
): Record<string, string> {
  return Object.fromEntries(
    codebook.details.flatMap(({ id, answers }) => {
      const answer = Object.hasOwn(details, id) ? details[id] : undefined;
      return answer !== undefined && answers.includes(answer) ? [[id, answer]] : [];
    }),
  );
}

function whyLeftOut(error: string): LeftOut | undefined {
  const characters = unencodable(error);
  if (characters.length > 0) return { code: 'characters', characters };
  const { length } = error;
  return length > longestError ? { code: 'too-long', length, most: longestError } : undefined;
}

/** The code of a note; undefined where the codebook cannot write it, which a journey of its guide rules out. */
export function codeOf(
  codebooks: Codebooks,
  codebook: Codebook,
  guide: GuideId,
  fragment: Fragment,
): Coded | undefined {
  const error = tidyErrorText(fragment.error ?? '');
  const leftOut = whyLeftOut(error);
  const note: Note = {
    release: codebook.release,
    guide,
    journey: fragment.journey,
    day: dayOf(new Date(`${fragment.made ?? localDay(new Date())}T00:00:00Z`)),
    details: knownDetails(codebook, fragment.details),
    error: leftOut ? '' : error,
  };
  const written = writeCode(note, codebooks);
  if (!written.ok) return undefined;
  return leftOut ? { code: written.value, leftOut } : { code: written.value };
}

/** The preview as the firm's technicians read it: in the site's first language, whatever this page speaks. */
export function previewPage(): string {
  const place = document.getElementById('note')?.dataset['preview'] ?? '../preview/';
  return new URL(place, location.href).href;
}

/** The preview's address with a code, and with what the code cannot hold. */
export function previewAddress(
  preview: string,
  { code, leftOut }: Coded,
  fragment: Fragment,
): string {
  const { error, model, remark } = fragment;
  const url = new URL(preview);
  url.hash = fragmentHash({
    journey: [],
    details: {},
    code,
    ...defined({ error: leftOut && error, model, remark }),
  });
  return url.href;
}
