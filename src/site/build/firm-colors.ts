import type { Plugin } from 'vite';
import { STYLE, inFirmColors } from '../../content/colors.ts';
import { firm } from '../../content/load.ts';

/** The pages' style with the firm's colors in place of ours. */
export function firmColors(): Plugin {
  return {
    name: 'firm-colors',
    enforce: 'pre',
    transform: (code, id) =>
      id.split('?')[0]?.endsWith(STYLE) ? inFirmColors(code, firm().colors) : undefined,
  };
}
