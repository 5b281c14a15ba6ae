import { expect, test } from 'vitest';
import { dirichlet } from '../../../src/diagnosis/learn.ts';

test.each([
  // Laplace's rule of succession, (s + 1)/(n + 2), from memory: a flat prior worth 2.
  { p: [0.5, 0.5], counts: [7, 3], strength: 2, mean: 8 / 12 },
  // Gelman et al., "Bayesian Data Analysis", placenta previa, from memory: 437 girls of 980
  // births and a flat prior give .446.
  { p: [0.5, 0.5], counts: [437, 543], strength: 2, mean: 0.446 },
  // No visits: the old figures.
  { p: [0.2, 0.3, 0.5], counts: [0, 0, 0], strength: 50, mean: 0.2 },
])('$counts with $p worth $strength: $mean', ({ p, counts, strength, mean }) => {
  const after = dirichlet(p, counts, strength);
  expect(after[0]).toBeCloseTo(mean, 3);
  expect(after.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
});
