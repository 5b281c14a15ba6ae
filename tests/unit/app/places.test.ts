import { expect, test } from 'vitest';
import { behind, inFront, spots } from '../../../src/app/preview/places.ts';
import { models } from '../../../src/content/load.ts';

test('every place that the model names is in the drawing once, and every other is needed', () => {
  const [model] = Object.values(models());
  const named = new Set(model?.faults.flatMap(({ place }) => place ?? []));
  expect(named.size).toBeGreaterThan(10);
  for (const controls of [behind, inFront]) {
    const drawn = [...Object.keys(spots), ...Object.keys(controls)];
    expect(drawn.toSorted()).toEqual([...named].toSorted());
  }
});
