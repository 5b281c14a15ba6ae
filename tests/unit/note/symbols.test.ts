import fc from 'fast-check';
import { expect, test } from 'vitest';
import { groupedText, numberToSymbols, symbolsToNumber } from '../../../src/note/symbols.ts';

test('a number and its symbols say the same', () => {
  const sized = fc
    .integer({ min: 1, max: 50 })
    .chain((count) =>
      fc.tuple(fc.constant(count), fc.bigInt({ min: 0n, max: (1n << BigInt(5 * count)) - 1n })),
    );
  fc.assert(
    fc.property(sized, ([count, number]) => {
      const symbols = numberToSymbols(number, count);
      expect(symbols).toHaveLength(count);
      expect(symbolsToNumber(symbols, count)).toBe(number);
    }),
  );
});

test('the most significant symbol comes first', () => {
  expect([...numberToSymbols(32n * 7n + 31n, 3)]).toEqual([0, 7, 31]);
});

test('text comes in groups of four', () => {
  const symbols = Uint8Array.from([0, 1, 2, 3, 10, 17, 18, 32, 31]);
  expect(groupedText(symbols)).toBe('0123-AHJ?-Z');
});
