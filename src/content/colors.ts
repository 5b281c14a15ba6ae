/** The themes' colors as `style/base.css` has them, with those of the firm in place of ours. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  formatHex,
  interpolate,
  parse,
  wcagContrast,
} from 'culori';
import type { Color } from 'culori';
import type { Firm } from './schema/firm.ts';

export const STYLE = 'src/site/style/base.css';
const themes = ['light', 'dark'] as const;
type Theme = (typeof themes)[number];

/** WCAG 2.2, 1.4.6 (AAA). */
export const LEAST_CONTRAST = 7;
/** CIEDE2000, as `tests/unit/site/colors` asks of our own. */
export const LEAST_APART = 10;
/** Blue may be a firm's: a notice is of no injury, and has its word. */
const MEANINGS = ['done', 'danger', 'warning', 'caution'];

const apart = differenceCiede2000();
/** As everyone sees colors, and with either common dichromacy. */
const SEEN = [(color: Color) => color, filterDeficiencyDeuter(1), filterDeficiencyProt(1)];

/** The least distance of two colors over all eyes. */
function least(one: string, other: string): number {
  const [a, b] = [parse(one), parse(other)];
  return a && b ? Math.min(...SEEN.map((seen) => apart(seen(a), seen(b)))) : 0;
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
    const soft = formatHex(interpolate([colorOf(text, theme, 'paper'), colors[theme]])(0.2));
    const block = text
      .slice(from, to)
      .replace(VALUE('accent'), `$1${colors[theme]};`)
      .replace(VALUE('accent-soft'), `$1${soft};`);
    return text.slice(0, from) + block + text.slice(to);
  }, css);
}

/** The style as this repository has it. */
export const readStyle = (): string => readFileSync(join(process.cwd(), STYLE), 'utf8');

/** What is wrong with a firm's color: too little contrast, or too near to a color with a meaning. */
export interface PoorColor {
  readonly theme: Theme;
  readonly code: 'color-pale' | 'color-near';
  readonly other: string;
  readonly is: number;
}

export function poorColors(colors: NonNullable<Firm['colors']>): readonly PoorColor[] {
  const css = readStyle();
  return themes.flatMap((theme) => {
    const own = colors[theme];
    const of = (name: string) => colorOf(css, theme, name);
    return [
      ...['paper', 'card', 'accent-ink']
        .map((other) => ({ theme, other, is: wcagContrast(own, of(other)) }))
        .filter(({ is }) => is < LEAST_CONTRAST)
        .map((one) => ({ ...one, code: 'color-pale' }) as const),
      ...MEANINGS.map((other) => ({ theme, other, is: least(own, of(other)) }))
        .filter(({ is }) => is < LEAST_APART)
        .map((one) => ({ ...one, code: 'color-near' }) as const),
    ];
  });
}
