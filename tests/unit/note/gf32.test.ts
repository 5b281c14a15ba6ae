import { expect, test } from 'vitest';
import { divide, log, multiply, order, power } from '../../../src/note/gf32.ts';

/** Long multiplication of polynomials over GF(2), then long division by x⁵ + x² + 1. */
function slowProduct(a: number, b: number): number {
  let product = 0;
  for (let bit = 0; bit < 5; bit += 1) if ((b >> bit) & 1) product ^= a << bit;
  for (let bit = 9; bit >= 5; bit -= 1) if ((product >> bit) & 1) product ^= 0x25 << (bit - 5);
  return product;
}

const all = Array.from({ length: 32 }, (_, i) => i);

test('products agree with polynomial arithmetic, all 1024 of them', () => {
  for (const a of all) for (const b of all) expect(multiply(a, b)).toBe(slowProduct(a, b));
});

test('dividing undoes multiplying', () => {
  for (const a of all) for (const b of all.slice(1)) expect(divide(multiply(a, b), b)).toBe(a);
});

test('2 generates every non-zero element', () => {
  const powers = Array.from({ length: order }, (_, i) => power(i));
  expect(new Set(powers)).toEqual(new Set(all.slice(1)));
  for (const [i, element] of powers.entries()) {
    expect(log(element)).toBe(i);
    expect(power(i - order)).toBe(element);
    expect(multiply(element, 2)).toBe(power(i + 1));
  }
});
