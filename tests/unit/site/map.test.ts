import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { guides, mainLanguage } from '../../../src/content/load.ts';
import { SCALE, SHEET, TEXT, wrapped } from '../../../src/site/map-layout.ts';
import type { Placed } from '../../../src/site/map-layout.ts';
import { drawnMap } from '../../../src/site/map.ts';

/** Rounding in the layout. */
const SLACK = 0.01;
const apart = (a: Placed, b: Placed): boolean =>
  a.x + a.width <= b.x + SLACK ||
  b.x + b.width <= a.x + SLACK ||
  a.y + a.height <= b.y + SLACK ||
  b.y + b.height <= a.y + SLACK;

describe.each(guides())('the drawing of $id', (guide) => {
  const { strips, arrows, boxes, exits, numbers } = drawnMap(mainLanguage(), guide);

  it('has every box and every arrow once; only danger answers’ own pages are left out', () => {
    const drawn = strips.flatMap((strip) => strip.boxes.map(({ id }) => id));
    const met = new Set(arrows.flatMap(({ from, to }) => [from, to]));
    const apartFrom = [...boxes.keys()].filter((id) => !met.has(id));
    const danger = new Set(exits.map(({ to }) => to));
    expect(drawn.toSorted()).toEqual([...met].toSorted());
    expect(apartFrom.filter((id) => !danger.has(id))).toEqual([]);
    const ends = ({ from, to }: { from: string; to: string }) => `${from} ${to}`;
    const told = strips.flatMap((strip) => strip.arrows.map(ends));
    expect(told.toSorted()).toEqual(arrows.map(ends).toSorted());
  });

  it('keeps boxes and words inside, apart from each other, and a strip on one sheet', () => {
    expect(strips.length).toBeGreaterThan(0);
    for (const strip of strips) {
      const solid = [...strip.boxes, ...strip.arrows.flatMap(({ words }) => words ?? [])];
      for (const [index, one] of solid.entries()) {
        expect(Math.min(one.x, one.y)).toBeGreaterThanOrEqual(0);
        expect(one.x + one.width).toBeLessThanOrEqual(strip.width);
        expect(one.y + one.height).toBeLessThanOrEqual(strip.height);
        for (const other of solid.slice(index + 1))
          expect(apart(one, other), `${one.lines.join(' ')} | ${other.lines.join(' ')}`).toBe(true);
      }
      expect(strip.width).toBeLessThanOrEqual(SHEET.width);
      expect(strip.height).toBeLessThanOrEqual(SHEET.height);
    }
  });

  it('leads lines to the right only, level past every box', () => {
    for (const { arrows: led, boxes: placed } of strips)
      for (const { from, to, lines } of led)
        for (const levels of lines) {
          const xs = levels.flatMap((level) => [level.from, level.to]);
          expect(xs, `${from} ${to}`).toEqual(xs.toSorted((a, b) => a - b));
          for (const level of levels)
            for (const { id, x, y, width, height } of placed)
              expect(
                level.y > y &&
                  level.y < y + height &&
                  level.from < x + width - SLACK &&
                  level.to > x + SLACK,
                `${from} ${to} crosses ${id}`,
              ).toBe(false);
        }
  });

  it('says where an arrow goes on that leaves its strip', () => {
    for (const { boxes: here, arrows: led } of strips)
      for (const { to, refers, words } of led) {
        const reference = `→ ${String(numbers.get(to))}.`;
        if (!here.some(({ id }) => id === to)) expect(refers).toBe(true);
        expect(words?.lines.some((line) => line.startsWith(reference)) ?? false).toBe(refers);
      }
  });
});

describe('the drawing', () => {
  it('has text of 7 points or more on paper, as its style says', () => {
    const css = readFileSync(new URL('../../../src/site/style/map.css', import.meta.url), 'utf8');
    expect(SCALE * TEXT).toBeGreaterThanOrEqual(7);
    expect(css).toContain(`font-size: ${(SCALE * TEXT).toFixed(2)}pt`);
  });

  it('breaks lines between words and ends the last in an ellipsis', () => {
    expect(wrapped('one two three', Infinity, 7)).toEqual(['one two', 'three']);
    expect(wrapped('one two three four', 2, 7)).toEqual(['one two', 'three…']);
  });
});
