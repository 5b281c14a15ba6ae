import { expect, test } from 'vitest';
import { band } from '../../../src/diagnosis/band.ts';

test.each([
  [1, 'likely'],
  [0.5, 'likely'],
  [0.4999, 'possible'],
  [0.1, 'possible'],
  [0.0999, 'unlikely'],
  [0.01, 'unlikely'],
  [0.0099, 'very-unlikely'],
  [0, 'very-unlikely'],
])('a share of %d is %s', (share, word) => {
  expect(band(share)).toBe(word);
});
