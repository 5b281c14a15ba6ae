/** Files of a release, sent as one. */

/** The bundle that only staff need, which looks back at no other, and the pages in it, from the scope. */
export const STAFF = 'staff';
export const STAFF_PAGES = /^(?:staff|preview|desk|round|bench)\//;

/** What a worker knows of a bundle. */
export interface Bundle {
  /** A guide's name, `shared`, `rest` or `staff`. */
  readonly name: string;
  /** Address relative to the worker's scope; it holds a part of the hash. */
  readonly path: string;
  /** SHA-256 of the bundle as it is sent, not compressed, base 64. */
  readonly hash: string;
  /** Bytes of its files: what they take up when kept. */
  readonly bytes: number;
}

/**
 * A bundle as it is sent, in JSON. Its files stand one after the other, and what repeats over more
 * than gzip looks back (32 KiB, RFC 1951) is written once: pages of a site are alike.
 */
export interface Packed {
  /** Address relative to the worker's scope, bytes, place among the release's headers; in order. */
  readonly files: readonly (readonly [path: string, bytes: number, headers: number])[];
  /** SHA-256 of all files one after the other, base 64. */
  readonly hash: string;
  /** By threes: so many bytes of `literals`, so many of those from so many back. */
  readonly copies: readonly number[];
  /** A character a byte. */
  readonly literals: string;
}

/** SHA-256 in base 64, as the build writes it. */
export async function digest(body: BufferSource): Promise<string> {
  const bytes = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
  return btoa(String.fromCharCode(...bytes));
}

/**
 * The bytes of all files of a bundle, one after the other, not verified.
 *
 * @param before what copies may look back at beside the bundle itself: the bundle that all share
 */
export function unpack(
  { files, copies, literals }: Packed,
  before: Uint8Array,
): Uint8Array<ArrayBuffer> {
  const size = files.reduce((sum, [, bytes]) => sum + bytes, 0);
  const all = new Uint8Array(before.length + size);
  all.set(before);
  let at = before.length;
  let read = 0;
  for (let i = 0; i < copies.length; i += 3) {
    const [literal = 0, length = 0, back = 0] = copies.slice(i, i + 3);
    for (const end = read + literal; read < end; read += 1, at += 1)
      all[at] = literals.charCodeAt(read);
    all.copyWithin(at, at - back, at - back + length);
    at += length;
  }
  return all.subarray(before.length);
}
