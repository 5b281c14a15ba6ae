import { firm } from './content.ts';

/** The languages of this copy, the default one first. */
export function languages(): readonly string[] {
  return firm().languages;
}

/** An address on this site, from its root: the default language has no prefix. */
export function address(language: string, path: string): string {
  return language === languages()[0] ? `/${path}` : `/${language}/${path}`;
}

/** What a page's `[...lang]` takes: nothing for the default language. */
export function languageParams(): {
  params: { lang: string | undefined };
  props: { language: string };
}[] {
  return languages().map((language, index) => ({
    params: { lang: index === 0 ? undefined : language },
    props: { language },
  }));
}
