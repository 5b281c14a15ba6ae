import type { Packed } from '../../offline/worker/bundle.ts';

/** Bytes compared at first, by their hash; a shorter repetition is gzip's or brotli's to find. */
const KEY = 56;
/** Of what was written, every so many bytes can be found; with them any repetition of LEAST is. */
const STEP = 8;
const LEAST = KEY + STEP;
/** Places with the same hash that are looked at, the last ones first. */
const TRIES = 24;
const BITS = 20;

/** Of KEY bytes, BITS bits: Fibonacci hashing, four bytes at a time. */
function keyAt(data: Buffer, at: number): number {
  let hash = 0;
  for (let i = at; i < at + KEY; i += 4)
    hash = Math.imul(hash ^ data.readInt32LE(i) ^ (hash >>> 15), 0x9e3779b1);
  return hash >>> (32 - BITS);
}

/**
 * What `unpack` makes `files` of again: LZ77 that looks back without a limit and only for long
 * repetitions, to be compressed on its way by the host. DEFLATE looks back 32 KiB, and dictionaries
 * for brotli (RFC 9842) are not in every browser.
 *
 * @param before what may be looked back at beside the files themselves
 */
export function pack(files: Buffer, before: Buffer): Pick<Packed, 'copies' | 'literals'> {
  const data = Buffer.concat([before, files]);
  const newest = new Int32Array(1 << BITS).fill(-1);
  const older = new Int32Array(Math.ceil(data.length / STEP));
  let known = 0;
  const learn = (end: number): void => {
    for (; known < end && known + KEY <= data.length; known += STEP) {
      const key = keyAt(data, known);
      older[known / STEP] = newest[key] ?? -1;
      newest[key] = known;
    }
  };
  const copies: number[] = [];
  const literals: Buffer[] = [];
  let done = before.length;
  const write = (end: number, length = 0, back = 0): void => {
    copies.push(end - done, length, back);
    literals.push(data.subarray(done, end));
    done = end + length;
  };
  for (let at = done; at + LEAST <= data.length;) {
    learn(at);
    let from = newest[keyAt(data, at)] ?? -1;
    let [best, length] = [-1, 0];
    for (let tries = TRIES; from >= 0 && tries > 0; tries -= 1) {
      // What is copied lies behind: it never reaches into itself.
      const most = Math.min(at - from, data.length - at);
      let same = 0;
      while (same < most && data[from + same] === data[at + same]) same += 1;
      if (same > length) [best, length] = [from, same];
      from = older[from / STEP] ?? -1;
    }
    if (length < LEAST) {
      at += 1;
      continue;
    }
    let start = at;
    while (
      start > done &&
      best > 0 &&
      best + length < start &&
      data[best - 1] === data[start - 1]
    ) {
      start -= 1;
      best -= 1;
      length += 1;
    }
    write(start, length, start - best);
    at = done;
  }
  write(data.length);
  return { copies, literals: Buffer.concat(literals).toString('latin1') };
}
