import { expect, it } from 'vitest';
import { localeOf } from '../../../src/content/load.ts';

// IETF BCP 47. English keeps to the firm's region, which is at home in this copy.
it.each([
  ['en', 'en'],
  ['es', 'es-US'],
  ['fr', 'fr-CA'],
  ['ar', 'ar'],
])('%s is written as %s', (language, tag) => {
  expect(localeOf(language)).toBe(tag);
  expect(Intl.getCanonicalLocales(tag)).toEqual([tag]);
});
