/**
 * The meanings of colors stay apart for everyone: by CIEDE2000 (ISO/CIE 11664-6:2022), as seen by
 * full color vision and with the dichromacies that culori simulates after Machado, Oliveira and
 * Fernandes 2009.
 */
import { readFileSync } from 'node:fs';
import {
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  parse,
  wcagContrast,
} from 'culori';
import type { Color } from 'culori';
import { describe, expect, test } from 'vitest';

const css = readFileSync(new URL('../../../src/site/style/base.css', import.meta.url), 'utf8');
const [light = '', dark = ''] = [...css.matchAll(/:root \{[^}]*--paper[^}]*\}/g)].map(
  ([text]) => text,
);
const MEANINGS = ['accent', 'done', 'danger', 'warning', 'caution', 'notice'] as const;
const difference = differenceCiede2000();
const readers = {
  anyone: (color: Color) => color,
  deuteranope: filterDeficiencyDeuter(1),
  protanope: filterDeficiencyProt(1),
};

test('the example pairs of the formula’s authors come out (Sharma, Wu and Dalal 2005, table 1, from memory)', () => {
  const lab = (l: number, a: number, b: number) => ({ mode: 'lab65', l, a, b }) as const;
  expect(difference(lab(50, 2.6772, -79.7751), lab(50, 0, -82.7485))).toBeCloseTo(2.0425, 3);
  expect(difference(lab(50, 2.5, 0), lab(73, 25, -18))).toBeCloseTo(27.1492, 3);
});

describe.each([
  ['light', light],
  ['dark', dark],
])('in the %s theme', (_, theme) => {
  const color = (name: string): string => {
    const [, value] = new RegExp(`--${name}: (#[0-9a-f]{3,6});`).exec(theme) ?? [];
    if (value === undefined) throw new Error(`base.css has no color --${name}.`);
    return value;
  };
  const parsed = (name: string): Color => {
    const value = parse(color(name));
    if (value === undefined) throw new Error(`--${name} is no color.`);
    return value;
  };

  test.each(Object.entries(readers))('%s tells every meaning from every other', (_who, seen) => {
    const close = MEANINGS.flatMap((one, index) =>
      MEANINGS.slice(index + 1).flatMap((other) => {
        const apart = difference(seen(parsed(one)), seen(parsed(other)));
        return apart >= 10 ? [] : [`${one} and ${other}: ${apart.toFixed(1)}`];
      }),
    );
    expect(close).toEqual([]);
  });

  test('what is text keeps 7:1, and the tick and the red of drawings 3:1 (WCAG 2.2, 1.4.6 and 1.4.11)', () => {
    for (const ground of ['paper', 'card'])
      for (const text of ['ink', 'quiet', 'accent'])
        expect(wcagContrast(color(text), color(ground)), `${text} on ${ground}`).toBeGreaterThan(7);
    for (const mark of ['done', 'danger-line'])
      expect(wcagContrast(color(mark), color('card')), mark).toBeGreaterThan(3);
    expect(wcagContrast('#fff', color('danger'))).toBeGreaterThan(7);
  });
});
