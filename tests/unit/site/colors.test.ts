import { readFileSync, readdirSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { iconPng, iconSvg, icons } from '../../../src/site/icon.ts';
import { token } from '../../../src/site/tokens.ts';

const SRC = new URL('../../../src/', import.meta.url);
const css = readFileSync(new URL('site/style/base.css', SRC), 'utf8');
/** The color of a pixel, as base.css writes one. */
async function colorAt(png: Uint8Array, left: number, top: number): Promise<string> {
  const pixel = sharp(png).extract({ left, top, width: 1, height: 1 }).removeAlpha().raw();
  return `#${(await pixel.toBuffer()).toString('hex')}`;
}

describe('colors have one source', () => {
  it('is base.css, light theme', () => {
    for (const name of ['paper', 'ink', 'accent', 'accent-soft'])
      expect(css.indexOf(`--${name}: ${token(name)};`), name).toBeLessThan(css.indexOf('dark) {'));
    expect(() => token('no-such')).toThrow('--no-such');
  });

  it('and our own icon has it, where the firm has no logo', async () => {
    const own = iconSvg({});
    expect(iconSvg()).not.toBe(own);
    const used = new Set(own.match(/#[0-9a-f]{3,6}/g));
    expect(used).toEqual(new Set(['ink', 'paper', 'accent', 'accent-soft'].map(token)));
    expect(own).not.toContain('var(');
    expect(icons.length).toBeGreaterThan(0);
    for (const icon of icons) {
      const png = await iconPng(icon, own);
      const { width, height, format } = await sharp(png).metadata();
      expect([width, height, format]).toEqual([icon.size, icon.size, 'png']);
      // The middle of the drawing's box, and of the bar above it.
      const part = { any: 0.92, maskable: 0.54 }[icon.purpose];
      const at = (y: number) => Math.round(icon.size * (0.5 + part * (y / 110 - 0.5)));
      expect(await colorAt(png, icon.size / 2, at(54))).toBe(token('accent-soft'));
      expect(await colorAt(png, icon.size / 2, at(24))).toBe(token('accent'));
      const { data } = await sharp(png).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
      expect(data[3], 'the corner of a maskable icon is filled').toBe(
        icon.purpose === 'maskable' ? 255 : 0,
      );
      if (icon.purpose === 'maskable') expect(await colorAt(png, 0, 0)).toBe(token('paper'));
    }
  });

  it('and no other file names a color of the theme', () => {
    const colors = new Set(
      [...css.matchAll(/--[\w-]+: (#[0-9a-f]{6});/g)].map(([, one = '']) => one),
    );
    expect(colors.size).toBeGreaterThan(15);
    const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter(
      (name) => /\.(?:ts|tsx|astro|svg|css)$/.test(name) && name !== 'site/style/base.css',
    );
    expect(files.length).toBeGreaterThan(400);
    const named = files.filter((name) => {
      const text = readFileSync(new URL(name, SRC), 'utf8').toLowerCase();
      return [...colors].some((color) => text.includes(color));
    });
    expect(named).toEqual([]);
  });
});
