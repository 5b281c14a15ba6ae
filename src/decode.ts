/** The bytes of a file or a pipe as text. */
import { fail, ok, type Result } from './result.ts';

/** Bytes that are no text as this site reads it: not UTF-8, and without the mark of UTF-16. */
export interface EncodingProblem {
  readonly code: 'encoding';
}

/**
 * UTF-8, or UTF-16 with its byte order mark, as spreadsheets write them. Anything else is refused:
 * a guess would turn names into other names without a word.
 */
export function textOf(bytes: Uint8Array<ArrayBuffer>): Result<string, EncodingProblem> {
  const [first, second] = bytes;
  const marked = { 0xfffe: 'utf-16le', 0xfeff: 'utf-16be' }[((first ?? 0) << 8) | (second ?? 0)];
  try {
    const text = new TextDecoder(marked ?? 'utf-8', { fatal: true }).decode(bytes);
    // UTF-16 without its mark is good UTF-8, with a NUL beside each character.
    return text.includes('\0') ? fail({ code: 'encoding' }) : ok(text);
  } catch {
    return fail({ code: 'encoding' });
  }
}
