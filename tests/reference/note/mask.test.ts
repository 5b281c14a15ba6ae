// The mask's digits against π worked out here: Machin's formula π/4 = 4 arctan 1/5 - arctan 1/239
// (1706), and its best-known hexadecimal digits, 3.243F6A8885A308D3 (from memory).
import { expect, test } from 'vitest';
import { codeLengths, masked } from '../../../src/note/blocks.ts';

const bits = 512n;

/** arctan(1/x) times 2^512 by its series. */
function arctanOfInverse(x: bigint): bigint {
  let sum = 0n;
  let power = (1n << bits) / x;
  for (let n = 1n; power > 0n; n += 2n) {
    sum += n % 4n === 1n ? power / n : -(power / n);
    power /= x * x;
  }
  return sum;
}

const pi = 4n * (4n * arctanOfInverse(5n) - arctanOfInverse(239n));
const fraction = pi & ((1n << bits) - 1n);

test('the digits are those of π', () => {
  expect(pi >> bits).toBe(3n);
  expect((fraction >> (bits - 64n)).toString(16)).toBe('243f6a8885a308d3');
});

test.each(codeLengths)('the mask of %i symbols is π from its group on', (length) => {
  const from = (length - 16) / 4;
  const digits = Array.from({ length }, (_, i) =>
    Number((fraction >> (bits - 5n * BigInt(from + i + 1))) & 31n),
  );
  expect([...masked(new Uint8Array(length))]).toEqual(digits);
});
