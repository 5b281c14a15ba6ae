// Feeds a reader of foreign text with damaged copies of good inputs. Whatever makes it answer in a
// way not seen before is kept and damaged further, so that the search goes where the reader branches.
import { makeRandom, type Random } from '../note/random.ts';

/** A reader under test. */
export interface Target {
  readonly name: string;
  /** Good inputs to begin with, and bits of the language to put in. */
  readonly seeds: readonly string[];
  readonly bits: readonly string[];
  /** Longer inputs are cut; past any bound the reader itself has, where it has one. */
  readonly longest: number;
  /**
   * Reads one input, and throws where something that must hold does not.
   *
   * @returns how it answered, in a few words: a kind, a set of problem codes
   */
  readonly read: (input: string) => string;
}

/** What happened to one reader. */
export interface Outcome {
  readonly inputs: number;
  /** Different ways it answered, and how often each. */
  readonly answers: ReadonlyMap<string, number>;
  /** Longest time of one input, ms: the quickest of several tries, so that other work does not count. */
  readonly slowest: number;
}

/** Inputs kept to be damaged further. */
const MOST_KEPT = 2000;
const ODD = [
  ...['\u202e', '\0', '<', '"', "'", '\\', '💥', '\ud800', '%', '&', '#', '=', '~', '.', '/', '-'],
  ...[
    '\n',
    '\t',
    '\ufeff',
    '\u2028',
    'İ',
    'ſ',
    '__proto__',
    'constructor',
    '-1',
    '1e999',
    '{',
    '[[',
  ],
];

function damaged(
  text: string,
  others: readonly string[],
  bits: readonly string[],
  r: Random,
): string {
  const at = r.below(text.length + 1);
  const end = Math.min(text.length, at + 1 + r.below(r.below(4) === 0 ? 200 : 8));
  const put = (middle: string): string => text.slice(0, at) + middle + text.slice(end);
  const insert = (middle: string): string => text.slice(0, at) + middle + text.slice(at);
  switch (r.below(10)) {
    case 0:
      return put('');
    case 1:
      return insert(text.slice(at, end));
    case 2:
      return put(r.pick(bits));
    case 3:
      return insert(r.pick(bits));
    case 4:
      return insert(r.pick(ODD));
    case 5:
      return put(String.fromCharCode(r.below(r.below(2) === 0 ? 128 : 0x10000)));
    case 6:
      return text.slice(0, at);
    case 7: {
      const other = r.pick(others);
      return text.slice(0, at) + other.slice(r.below(other.length + 1));
    }
    case 8:
      // Two neighbours change places.
      return put([...text.slice(at, end)].reverse().join(''));
    default:
      return insert(text.slice(at, end).repeat(1 + r.below(r.below(50) === 0 ? 400 : 4)));
  }
}

function timed(target: Target, input: string): { readonly answer: string; readonly ms: number } {
  const from = performance.now();
  const answer = target.read(input);
  return { answer, ms: performance.now() - from };
}

/** An input that took long is tried again: the machine may have been busy, or the compiler. */
const LOOK_AGAIN_MS = 2;
const TRIES = 5;

/**
 * @throws Error with the seed, the number and the input where the reader throws or does not keep
 * what it promises.
 */
export function fuzz(target: Target, inputs: number, seed: number): Outcome {
  const random = makeRandom(seed);
  const kept = [...target.seeds];
  const answers = new Map<string, number>();
  let slowest = 0;
  for (let run = 0; run < inputs; run += 1) {
    let input = run < target.seeds.length ? (target.seeds[run] ?? '') : random.pick(kept);
    if (run >= target.seeds.length)
      for (let times = 1 + random.below(3); times > 0; times -= 1)
        input = damaged(input, kept, target.bits, random).slice(0, target.longest);
    try {
      const { answer, ms } = timed(target, input);
      if (ms > Math.max(slowest, LOOK_AGAIN_MS)) {
        const again = Array.from({ length: TRIES }, () => timed(target, input).ms);
        slowest = Math.max(slowest, Math.min(ms, ...again));
      }
      if (!answers.has(answer) && kept.length < MOST_KEPT) kept.push(input);
      answers.set(answer, (answers.get(answer) ?? 0) + 1);
    } catch (error) {
      throw new Error(
        `${target.name}, seed ${String(seed)}, input ${String(run)}: ${JSON.stringify(input)}`,
        { cause: error },
      );
    }
  }
  return { inputs, answers, slowest };
}
