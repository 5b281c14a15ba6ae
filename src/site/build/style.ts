import { basename } from 'node:path';
import type { Plugin } from 'vite';
import { STYLE, inFirmColors } from '../../content/colors.ts';
import { firm } from '../../content/load.ts';

/** Files of what every page has; all others are some page's own. */
const HOUSE = new Set(['base.css', 'danger.css', 'aloud.css', 'late.css']);

/**
 * The pages' style: the firm's colors in place of ours, and each file in its layer, so that a page's
 * rules win over the house's whichever of them comes first.
 */
export function style(): Plugin {
  return {
    name: 'style',
    enforce: 'pre',
    transform(code, id) {
      const [path = ''] = id.split('?');
      if (!path.includes('/site/style/')) return undefined;
      const css = path.endsWith(STYLE) ? inFirmColors(code, firm().colors) : code;
      return HOUSE.has(basename(path))
        ? `@layer house{${css}}`
        : `@layer house,page;@layer page{${css}}`;
    },
  };
}
