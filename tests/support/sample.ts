/**
 * How many cases a sweep takes: a seeded part of them in the everyday run, all with `EVERY=1`.
 *
 * What a part still finds, by the rule of three (from memory; 1 − (1 − p)ⁿ ≥ 0.95 for p = 3/n): n cases
 * drawn at random meet a defect that spoils a share of 3/n of all cases with a chance of 95 %.
 */
export function cases(part: number, all: number): number {
  return process.env['EVERY'] === '1' ? all : part;
}
