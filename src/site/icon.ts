import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { content, firm } from '../content/load.ts';
import drawing from './icon.svg?raw';
import { token } from './tokens.ts';

/** The app's icon: the firm's logo; where it has none ours, in the light theme's colors. */
export function iconSvg({ logo }: { readonly logo?: string | undefined } = firm()): string {
  if (logo !== undefined) {
    const file = readFileSync(join(content().root, logo));
    if (logo.endsWith('.svg')) return file.toString();
    const data = `data:image/png;base64,${file.toString('base64')}`;
    return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64"><image width="64" height="64" href="${data}"/></svg>`;
  }
  return drawing.replace(/var\(--([\w-]+)\)/g, (_, name: string) => token(name));
}

/** Address of the firm's logo, where it has one: an SVG is the icon as well, and is fetched once. */
export function logoUrl({ logo } = firm()): string | undefined {
  return logo?.endsWith('.svg') ? '/icon.svg' : logo && `/${logo}`;
}

/** One picture of the icon; its file is `icon-<purpose>-<size>.png`. */
export interface Icon {
  /** In the words of the W3C Web App Manifest. */
  readonly purpose: 'any' | 'maskable';
  /** Pixels of each side. */
  readonly size: number;
}

export const icons: readonly Icon[] = [
  { purpose: 'any', size: 192 },
  { purpose: 'any', size: 512 },
  { purpose: 'maskable', size: 512 },
];

export const iconFile = ({ purpose, size }: Icon): string => `icon-${purpose}-${String(size)}.png`;

const CLEAR = { r: 0, g: 0, b: 0, alpha: 0 };

/**
 * Share of a side that the drawing takes. A maskable icon is cut to any shape: what matters lies in the
 * middle circle of 40 % radius (W3C Web App Manifest, "icon masks"), here a square of 54 %.
 */
const PART = { any: 0.92, maskable: 0.54 };

export async function iconPng(
  { purpose, size }: Icon,
  svg = iconSvg(),
): Promise<Uint8Array<ArrayBuffer>> {
  const side = Math.round(size * PART[purpose]);
  const picture = await sharp(Buffer.from(svg), { density: 400 })
    .resize({ width: side, height: side, fit: 'contain', background: CLEAR })
    .toBuffer();
  const background = purpose === 'maskable' ? token('paper') : CLEAR;
  const canvas = sharp({ create: { width: size, height: size, channels: 4, background } });
  return new Uint8Array(
    await canvas
      .composite([{ input: picture }])
      .png()
      .toBuffer(),
  );
}
