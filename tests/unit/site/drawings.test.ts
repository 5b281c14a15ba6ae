import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { drawingsShown } from '../../../src/content/names.ts';

const folder = new URL('../../../src/site/drawings/', import.meta.url);
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) =>
  file.endsWith('.svg'),
);
/** Of a theme, and what is blue, yellow, bread or dark in every theme. */
const COLORS = ['none', 'currentColor', '#fff', '#222', '#2f7fd0', '#e8a200', '#e2bd84'].concat(
  ['accent', 'accent-soft', 'card', 'danger-line', 'done'].map((token) => `var(--${token})`),
);

test('it is told of every drawing, and of no other, what it shows', () => {
  const drawn = files.filter((file) => !/[/\\]/.test(file)).map((file) => file.slice(0, -4));
  expect(drawn.length).toBeGreaterThan(0);
  expect(Object.keys(drawingsShown()).toSorted()).toEqual(drawn.toSorted());
});

test.each(files)('%s is small, of one size, and in the colors of drawings', (file) => {
  const svg = readFileSync(new URL(file.replaceAll('\\', '/'), folder), 'utf8');
  expect(Buffer.byteLength(svg)).toBeLessThan(1_100);
  expect(svg).toMatch(/viewBox="0 0 (?:160 110|64 44|24 24)" .*stroke-width="[23]"/);
  const used = [...svg.matchAll(/(?:fill|stroke)="([^"]*)"/g)].map(([, color]) => color);
  expect(used.length).toBeGreaterThan(0);
  expect(COLORS).toEqual(expect.arrayContaining(used));
});
