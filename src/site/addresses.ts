import { languages, mainLanguage, staffLanguage, staffLanguages } from '../content/load.ts';

/** An address on this site, from its root: the default language has no prefix. */
export function address(language: string, path: string): string {
  return language === mainLanguage() ? `/${path}` : `/${language}/${path}`;
}

/** The address of a page for staff, in the reader's language where the staff's pages speak it. */
export function staffAddress(language: string, path: string): string {
  return address(staffLanguage(language), path);
}

export interface LanguageParams {
  readonly params: { readonly lang: string | undefined };
  readonly props: { readonly language: string };
}

function paramsOf(of: readonly string[]): LanguageParams[] {
  return of.map((language) => ({
    params: { lang: language === mainLanguage() ? undefined : language },
    props: { language },
  }));
}

/** What a page's `[...lang]` takes: nothing for the default language. */
export function languageParams(): LanguageParams[] {
  return paramsOf(languages());
}

/** The same for a page for staff: a language that only homeowners' pages speak has none. */
export function staffParams(): LanguageParams[] {
  return paramsOf(staffLanguages());
}
