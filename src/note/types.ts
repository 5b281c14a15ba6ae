/**
 * What travels in a note code, and what reading or writing one can end in. All
 * problems are data: a stable `code` and the facts, never a sentence.
 */
import type { GuideId, Journey } from '../guide/types.ts';

declare const brand: unique symbol;

/**
 * A note code in its one canonical spelling: Crockford base 32 capitals in
 * groups of four joined by hyphens, `ABCD-EFGH-JKMN-PQRS`. Minted only by
 * `writeCode` and `readCode`, so whoever holds one knows its check symbols are right.
 */
export type NoteCode = string & { readonly [brand]: 'NoteCode' };

/** What a code says. No personal data has a place in it. */
export interface Note {
  /** The release whose codebook gives the numbers their meaning, 1 or more. */
  readonly release: number;
  readonly guide: GuideId;
  readonly journey: Journey;
  /** Day the note was made: days since 1970-01-01 UTC, mod 32 (0 to 31). See `day.ts`. */
  readonly day: number;
  /** Detail id → answer id. An unanswered detail is absent. */
  readonly details: Readonly<Record<string, string>>;
  /** The display's text as shown, tidy (see `error-text.ts`), or '' where there was none. */
  readonly error: string;
}

/** Why a note cannot be written as a code. */
export type WriteProblem =
  | {
      readonly code: 'unknown-release';
      readonly release: number;
      readonly known: readonly number[];
    }
  | { readonly code: 'unknown-guide'; readonly guide: string; readonly release: number }
  /** `step` is the place in the journey, from 0, that the codebook does not allow. */
  | {
      readonly code: 'not-a-journey';
      readonly step: number;
      readonly at: string;
      readonly answer: string;
    }
  | { readonly code: 'bad-day'; readonly day: number }
  | { readonly code: 'unknown-detail'; readonly detail: string }
  | { readonly code: 'unknown-detail-answer'; readonly detail: string; readonly answer: string }
  /** The characters of the display's text that no code can carry, each once. */
  | { readonly code: 'error-characters'; readonly characters: readonly string[] }
  | { readonly code: 'error-too-long'; readonly length: number; readonly most: number }
  /** Spaces at an end or doubled; `tidy` is what would be accepted. */
  | { readonly code: 'error-untidy'; readonly tidy: string }
  | { readonly code: 'too-much'; readonly bits: number; readonly most: number };

/**
 * One place where a repair changed what was given. `at` counts code characters
 * from 0, hyphens and spaces left out: in the repaired code, except for `added`,
 * where it is the place in what was given. `was` is '' for a dropped character and
 * '?' for an unreadable one, `is` is '' for an added one.
 */
export interface CodeEdit {
  readonly at: number;
  readonly was: string;
  readonly is: string;
  readonly how: 'wrong' | 'swapped' | 'dropped' | 'added' | 'unreadable';
}

/** The field of a note that cannot hold what the number says. */
export type Field = 'release' | 'guide' | 'journey' | 'details' | 'error' | 'length';

/** Why a code was refused. */
export type ReadProblem =
  | { readonly code: 'empty' }
  /** More than any code can hold: `given` code characters, or input characters past the bound. */
  | { readonly code: 'too-long'; readonly given: number; readonly most: number }
  | { readonly code: 'too-short'; readonly given: number; readonly least: number }
  /** Not a whole number of groups, and not one character off it. */
  | { readonly code: 'wrong-length'; readonly given: number; readonly nearest: readonly number[] }
  /** Only this group, counted from 1, is not of four characters, and no place for one helps. */
  | { readonly code: 'short-group'; readonly group: number; readonly given: number }
  /** `at` is the place in the input, `nth` the number of code characters before it; both from 0. */
  | {
      readonly code: 'bad-symbol';
      readonly at: number;
      readonly nth: number;
      readonly character: string;
    }
  /** Among spelling words, one that is none. */
  | { readonly code: 'bad-word'; readonly at: number; readonly nth: number; readonly word: string }
  | { readonly code: 'too-many-unreadable'; readonly given: number; readonly most: number }
  | { readonly code: 'too-damaged'; readonly given: number }
  /** Several different codes are equally near. */
  | { readonly code: 'ambiguous'; readonly count: number }
  | {
      readonly code: 'unknown-release';
      readonly release: number;
      readonly known: readonly number[];
    }
  /** The check symbols agree, yet no note has this number. */
  | { readonly code: 'impossible'; readonly field: Field };

/** What comes of reading a code. */
export type Reading =
  | { readonly kind: 'exact'; readonly code: NoteCode; readonly note: Note }
  | {
      readonly kind: 'repaired';
      readonly code: NoteCode;
      readonly note: Note;
      readonly places: readonly CodeEdit[];
      /** The code was given as digits (`digits.ts`): the places count those. */
      readonly digits?: true;
      /**
       * Check symbols left over to confirm the repair, 0 to 6, the least of its blocks. A random
       * other text passes with 1 chance in 32 to this power: at 0, three characters that sound like
       * what they became, nothing was left to check with but the ear.
       */
      readonly spare: number;
    }
  | { readonly kind: 'refused'; readonly problem: ReadProblem };
