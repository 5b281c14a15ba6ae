import { encode } from 'uqr';

export interface QrPath {
  /** Modules along a side, the quiet zone included. */
  readonly size: number;
  /** SVG path of the dark modules, one unit a module. */
  readonly path: string;
}

/** ISO/IEC 18004 asks for a quiet zone of four modules. */
const QUIET = 4;

/** A QR code as one SVG path, level M. */
export function qrPath(text: string): QrPath {
  const { size, data } = encode(text, { ecc: 'M', border: QUIET });
  const path = data
    .flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : '')))
    .join('');
  return { size, path };
}
