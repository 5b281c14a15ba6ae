import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { drawingsShown } from '../../../src/content/names.ts';

test('it is told of every drawing, and of no other, what it shows', () => {
  const files = readdirSync(new URL('../../../src/site/drawings/', import.meta.url));
  const drawn = files.filter((file) => file.endsWith('.svg')).map((file) => file.slice(0, -4));
  expect(drawn.length).toBeGreaterThan(0);
  expect(Object.keys(drawingsShown()).toSorted()).toEqual(drawn.toSorted());
});
