/**
 * The field of 32 elements, GF(2)[x] / (x⁵ + x² + 1). An element is its polynomial's
 * coefficients as bits; adding is XOR; α = x = 2 generates all 31 non-zero elements.
 */
const primitive = 0x25;
/** Order of the multiplicative group. */
export const order = 31;

const powers = new Uint8Array(order);
const logs = new Uint8Array(order + 1);
for (let i = 0, x = 1; i < order; i += 1) {
  powers[i] = x;
  logs[x] = i;
  x = x & 16 ? (x << 1) ^ primitive : x << 1;
}

const products = new Uint8Array(32 * 32);
for (let a = 1; a < 32; a += 1) {
  for (let b = 1; b < 32; b += 1) products[a * 32 + b] = power(log(a) + log(b));
}

/** α to the power of a whole number, negative ones too. */
export function power(exponent: number): number {
  return powers[((exponent % order) + order) % order] ?? 0;
}

/** The exponent, 0 to 30, of a non-zero element. */
export function log(a: number): number {
  return logs[a] ?? 0;
}

export function multiply(a: number, b: number): number {
  return products[a * 32 + b] ?? 0;
}

/** a / b for a non-zero b. */
export function divide(a: number, b: number): number {
  return a === 0 ? 0 : power(log(a) - log(b));
}
