/** The themes' colors as `style/base.css` has them, with those of the firm in place of ours. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Firm } from './schema/firm.ts';

export const STYLE = 'src/site/style/base.css';
export const themes = ['light', 'dark'] as const;
export type Theme = (typeof themes)[number];

/** WCAG 2.2, 1.4.6 (AAA). */
export const LEAST_CONTRAST = 7;

/** A color's channels, 0 to 1; `#fff` and `#ffffff` alike. */
function channels(color: string): readonly number[] {
  const hex = color.length === 4 ? color.replace(/[^#]/g, '$&$&') : color;
  return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
}

/** Relative luminance (WCAG 2.2): sRGB made linear, weighted by the eye. */
function luminance(color: string): number {
  const [r = 0, g = 0, b = 0] = channels(color).map((c) =>
    c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio of two colors, 1 to 21 (WCAG 2.2). */
export function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].toSorted((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

function mixed(color: string, into: string, part: number): string {
  const base = channels(into);
  const parts = channels(color).map((c, at) => c * part + (base[at] ?? 0) * (1 - part));
  return `#${parts.map((c) => Math.round(c * 255).toString(16).padStart(2, '0')).join('')}`;
}

const VALUE = (name: string) => new RegExp(`(--${name}:\\s*)(#[0-9a-f]{3,6});`);

/** Where each theme's tokens stand in the style: the first block, and the first one for the dark. */
function split(css: string): Readonly<Record<Theme, readonly [number, number]>> {
  const dark = css.indexOf('prefers-color-scheme: dark');
  return { light: [0, css.indexOf('}')], dark: [dark, css.indexOf('}', dark)] };
}

/** A theme's color by its name; throws for one that is not there. */
export function colorOf(css: string, theme: Theme, name: string): string {
  const value = VALUE(name).exec(css.slice(...split(css)[theme]))?.[2];
  if (value === undefined) throw new Error(`${STYLE} has no color --${name} (${theme}).`);
  return value;
}

/** The style with the firm's colors: the accent and the soft one made of it, in both themes. */
export function inFirmColors(css: string, colors: Firm['colors']): string {
  if (!colors) return css;
  return (['dark', 'light'] as const).reduce((text, theme) => {
    const [from, to] = split(text)[theme];
    const soft = mixed(colors[theme], colorOf(text, theme, 'paper'), 0.25);
    const block = text
      .slice(from, to)
      .replace(VALUE('accent'), `$1${colors[theme]};`)
      .replace(VALUE('accent-soft'), `$1${soft};`);
    return text.slice(0, from) + block + text.slice(to);
  }, css);
}

/** The style as this repository has it. */
export const readStyle = (): string => readFileSync(join(process.cwd(), STYLE), 'utf8');

/** Where a firm's color stands out too little: from what it is written on, or under its own text. */
export function paleColors(
  colors: NonNullable<Firm['colors']>,
): readonly { readonly theme: Theme; readonly on: string; readonly ratio: number }[] {
  const css = readStyle();
  return themes.flatMap((theme) =>
    ['paper', 'card', 'accent-ink']
      .map((on) => ({ theme, on, ratio: contrast(colors[theme], colorOf(css, theme, on)) }))
      .filter(({ ratio }) => ratio < LEAST_CONTRAST),
  );
}
