/** The sentences a page carries (see `parts/Words.astro`), for the parts that run in the browser. */
import i18next from 'i18next';
import { embedded } from './embedded.ts';

export interface Words {
  readonly language: string;
  /** One sentence. Counted keys (`_one`, `_other`) take `count`. */
  t(key: string, facts?: Readonly<Record<string, string | number>>): string;
  /** A list of sentences. */
  list(key: string): readonly string[];
  /** Whether there is such a sentence: names from old releases may have lost theirs. */
  has(key: string): boolean;
}

interface Carried {
  readonly language: string;
  readonly texts: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
}

function missing(key: string): never {
  throw new RangeError(`No sentence for "${key}".`);
}

/** Start the page's sentences, with the settings of `src/text/words.ts`. */
export function pageWords(): Words {
  const { language, texts } = embedded('words') as Carried;
  const names = Object.keys(texts);
  const engine = i18next.createInstance({
    lng: language,
    fallbackLng: false,
    ns: names,
    defaultNS: names[0] ?? false,
    resources: { [language]: texts },
    initAsync: false,
    // Solid escapes; twice would show entities.
    interpolation: { escapeValue: false },
    parseMissingKeyHandler: missing,
    missingInterpolationHandler: (text: string) => missing(text),
    returnObjects: true,
  });
  void engine.init();
  return {
    language,
    t: (key, facts = {}) => engine.t(key, facts),
    list: (key) => engine.t(key, { returnObjects: true }) as unknown as readonly string[],
    has: (key) => engine.exists(key),
  };
}
