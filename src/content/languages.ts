import { z } from 'zod';
import { checked, firm, yamlFile } from './load.ts';

const languageSchema = z.strictObject({
  /** In the language itself. */
  name: z.string().trim().min(1),
  direction: z.enum(['ltr', 'rtl']),
  /** Whether the staff's pages speak it too. */
  staff: z.boolean(),
  /** Texts that may stand as they are in English: names and words both languages share. */
  same: z.array(z.string()).default([]),
});

/** What there is to know of a language besides its sentences. */
export type Language = z.output<typeof languageSchema>;

const schema = z.record(z.string().regex(/^[a-z]{2}$/), languageSchema);
let all: z.output<typeof schema> | undefined;

/** A language of `content/languages.yaml`; one that is not there ends the build. */
export function languageOf(language: string): Language {
  all ??= checked(schema, yamlFile('languages.yaml'), 'languages.yaml');
  const found = all[language];
  if (!found)
    throw new Error(`content/languages.yaml has no "${language}", which content/firm.yaml names.`);
  return found;
}

/** The languages of this copy, the default one first. */
export function languages(): readonly string[] {
  return firm().languages;
}

/** The default language: its addresses have no prefix, and staff's pages always speak it. */
export function mainLanguage(): string {
  const [first] = languages();
  if (first === undefined || !languageOf(first).staff)
    throw new Error('content/firm.yaml: the first language must be one with staff pages.');
  return first;
}

/** The languages the staff's pages speak. */
export function staffLanguages(): readonly string[] {
  return languages().filter((language) => languageOf(language).staff);
}

/** The language the staff's pages speak to a reader of this one. */
export function staffLanguage(language: string): string {
  return languageOf(language).staff ? language : mainLanguage();
}
