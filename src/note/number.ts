/**
 * Mixed-radix numbers, least significant digit first: a list of digits, each
 * below its own radix, and a rest of any size on top.
 */
export interface Digit {
  readonly digit: bigint;
  readonly radix: bigint;
}

/** The number whose digits are these, with `rest` above them. */
export function pack(digits: readonly Digit[], rest: bigint): bigint {
  return digits.reduceRight((above, { digit, radix }) => above * radix + digit, rest);
}

/** Takes a packed number apart again: the radices must come in the order of packing. */
export interface Unpacker {
  readonly take: (radix: bigint) => bigint;
  /** What is left above the digits taken. */
  readonly rest: () => bigint;
}

export function unpacker(packed: bigint): Unpacker {
  let left = packed;
  return {
    take: (radix) => {
      const digit = left % radix;
      left /= radix;
      return digit;
    },
    rest: () => left,
  };
}
