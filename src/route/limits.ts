/** What is known of a list before it is read: light, where the reader of tables is not. */
import type { Labels } from '../visit/hand-over.ts';

/** A route has at most so many visits. */
export const MOST_VISITS = 500;
/** Most characters looked at: 500 rows of 2,000 characters. */
export const MOST_CHARACTERS = 1_000_000;
/** Is a file refused by its length, without reading it all? Four bytes a character at most. */
export const isTooLarge = (bytes: number): boolean => bytes > 4 * MOST_CHARACTERS;

/** A cell that stands for a code still to come. */
export const isUncoded = (text: string, labels: Labels): boolean =>
  text.trim() === '' || text.trim().toLowerCase() === labels.none.toLowerCase();
