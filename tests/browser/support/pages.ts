// The pages of each language, or an even sample of them.
import { languages } from '../../../src/content/load.ts';
import { siteDir } from './fixtures.ts';
import { readablePagesOf } from './site.ts';

/** Whether all pages are asked for. */
export const every = process.env['EVERY'] === '1';

const [main = '', ...others] = languages();

/** Pages of a language; with `step` only each so many-th, beginning elsewhere in each language. */
export function pagesIn(language: string, step: number): string[] {
  const own = readablePagesOf(siteDir()).filter((path) =>
    language === main
      ? !others.some((other) => path.startsWith(`/${other}/`))
      : path.startsWith(`/${language}/`),
  );
  const shift = languages().indexOf(language);
  return every ? own : own.filter((_, place) => place % step === shift % step);
}
