/**
 * The scale: six sizes of type, seven spaces, two radii, four widths of border, three of text and frame. Paper
 * (`@media print`) has measures of its own, and so has what fills the screen (vw, vh).
 */
import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';

const DIR = new URL('../../../src/site/style/', import.meta.url);
const SPACES = ['0', '0.25rem', '0.5rem', '0.75rem', '1rem', '1.5rem', '2rem', '3rem'];
const SPACE = [
  ...SPACES,
  ...SPACES.map((one) => `-${one}`),
  '1px',
  '-1px',
  'auto',
  'var(--gutter)',
];
const SIZES = ['0.875rem', '1rem', '1.125rem', '1.375rem', '1.75rem', '2.25rem'];
/** In the units of a drawing. */
const DRAWN = ['11px', '12px', '14px'];
/** What each property may say. One that is in no scale is not looked at. */
const SCALE: readonly (readonly [property: RegExp, values: readonly string[]])[] = [
  [/^font-size$/, [...SIZES, '100%', 'inherit', ...DRAWN]],
  [/^font$/, [...SIZES, '100%', 'inherit', ...DRAWN]],
  [/^(?:margin|padding)(?:-|$)|^(?:row-|column-)?gap$/, SPACE],
  [/^border-radius$/, ['var(--round)', '50%', '0']],
  [/^--round$/, ['4px', '8px']],
  [
    /^(?:border|outline)(?:-(?:top|right|bottom|left|inline|block|start|end))*(?:-width)?$/,
    ['0', 'none', '1px', '2px', '3px', '6px'],
  ],
  [/^max-width$/, ['76rem', '42rem', '30rem', 'none']],
];
/** The lengths in a value. */
const lengths = (value: string) =>
  value.match(
    /(?<![\w.#-])-?(?:\d*\.)?\d+(?:rem|em|px|%|pt|mm|cm|in)?(?![\w.])|auto|none|inherit|var\(--[\w-]+\)/g,
  ) ?? [];

/** Declarations for screens: what stands in a block for paper is cut out. */
function declarations(css: string): readonly (readonly [property: string, value: string])[] {
  const screen = css
    .replaceAll(/\/\*.*?\*\//gs, '')
    .replaceAll(/^(?:@media print|@page) \{.*?^\}/gms, '');
  return [...screen.matchAll(/([\w-]+):\s+([^;{}]+);/g)].map(([, name = '', value = '']) => [
    name,
    value,
  ]);
}

test.each(readdirSync(DIR))('%s keeps to the scale', (file) => {
  const all = declarations(readFileSync(new URL(file, DIR), 'utf8'));
  const measured = all.flatMap(([property, value]) => {
    const scale = SCALE.find(([of]) => of.test(property))?.[1];
    return scale && !/v[wh]|calc|\d%/.test(value) ? [{ property, value, scale }] : [];
  });
  expect(all.length).toBeGreaterThan(2);
  const odd = measured.filter(({ property, value, scale }) => {
    const [size = ''] =
      property === 'font' ? (/[\d.]+(?:rem|em|px|%)/.exec(value) ?? ['inherit']) : [];
    const said = property === 'font' ? [size] : lengths(value);
    return said.some((one) => !scale.includes(one) && !one.startsWith('var(--'));
  });
  expect(odd.map(({ property, value }) => `${property}: ${value}`)).toEqual([]);
});
