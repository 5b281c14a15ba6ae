const PLACEHOLDER = /\{\{(\w+)\}\}/g;

/** The names of a sentence's placeholders. */
export const placeholders = (text: string): Set<string> =>
  new Set([...text.matchAll(PLACEHOLDER)].map(([, name = '']) => name));

/** The same, and what i18next may have beside the name. */
const ANY_FORM = /\{\{\W*(\w+)[^}]*\}\}/gu;

/** A sentence with each placeholder replaced: by its own name, as reading aloud would say it. */
export const spoken = (text: string, as = '$1'): string => text.replace(ANY_FORM, as);
