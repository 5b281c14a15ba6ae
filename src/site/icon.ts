import sharp from 'sharp';
import drawing from './icon.svg?raw';
import { token } from './tokens.ts';

/** The app's icon in the colors of the light theme. */
export function iconSvg(): string {
  return drawing.replace(/var\(--([\w-]+)\)/g, (_, name: string) => token(name));
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

/**
 * Share of a side that the drawing takes. A maskable icon is cut to any shape: what matters lies in the
 * middle circle of 40 % radius (W3C Web App Manifest, "icon masks"), here a square of 54 %.
 */
const PART = { any: 0.92, maskable: 0.54 };

export async function iconPng({ purpose, size }: Icon): Promise<Uint8Array<ArrayBuffer>> {
  const picture = await sharp(Buffer.from(iconSvg()), { density: 400 })
    .resize(Math.round(size * PART[purpose]))
    .toBuffer();
  const background = purpose === 'maskable' ? token('paper') : { r: 0, g: 0, b: 0, alpha: 0 };
  const canvas = sharp({ create: { width: size, height: size, channels: 4, background } });
  return new Uint8Array(
    await canvas
      .composite([{ input: picture }])
      .png()
      .toBuffer(),
  );
}
