import { colorOf, inFirmColors, readStyle } from '../content/colors.ts';
import { firm } from '../content/load.ts';

/**
 * A color of the light theme: what stands outside the pages (icons, the web app's manifest) takes
 * its colors from the pages' style too. Throws for a name that is not there.
 */
export function token(name: string): string {
  return colorOf(inFirmColors(readStyle(), firm().colors), 'light', name);
}
