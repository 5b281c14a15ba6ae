import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const STYLE = 'src/site/style/base.css';

/**
 * A color of the light theme, as `style/base.css` has it: what stands outside the pages (icons, the
 * web app's manifest) takes its colors from there too. Throws for a name that is not there.
 */
export function token(name: string): string {
  const css = readFileSync(join(process.cwd(), STYLE), 'utf8');
  const light = css.slice(0, css.indexOf('}'));
  const value = new RegExp(`--${name}:\\s*(#[0-9a-f]{3,6});`).exec(light)?.[1];
  if (value === undefined) throw new Error(`${STYLE} has no color --${name}.`);
  return value;
}
