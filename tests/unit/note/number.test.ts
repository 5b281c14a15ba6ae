import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pack, unpacker } from '../../../src/note/number.ts';

const digit = fc
  .bigInt({ min: 1n, max: 1n << 40n })
  .chain((radix) =>
    fc.bigInt({ min: 0n, max: radix - 1n }).map((value) => ({ digit: value, radix })),
  );

test('a packed number comes apart into its digits and its rest', () => {
  fc.assert(
    fc.property(fc.array(digit, { maxLength: 12 }), fc.bigInt({ min: 0n }), (digits, rest) => {
      const left = unpacker(pack(digits, rest));
      expect(digits.map(({ radix }) => left.take(radix))).toEqual(digits.map((d) => d.digit));
      expect(left.rest()).toBe(rest);
    }),
  );
});

test('the first digit is the least significant', () => {
  const time = [
    { digit: 59n, radix: 60n },
    { digit: 2n, radix: 60n },
  ];
  expect(pack(time, 1n)).toBe(3600n + 2n * 60n + 59n);
});
