/**
 * The sentences a page carries (see `parts/Words.astro`), for the parts that run in the browser.
 * They are written for i18next, which fills in the firm's facts when the site is built; what is
 * left to do here is `{{fact}}` and the counted forms `_one`, `_other` … (`Intl.PluralRules`).
 * i18next itself would take 12 kB, a third of what a note page may weigh.
 */
import { split } from '../../guide/ids.ts';
import { embedded } from './embedded.ts';

type Facts = Readonly<Record<string, string | number>>;

export interface Words {
  readonly language: string;
  /** One sentence. Counted keys (`_one`, `_other`) take `count`. A missing key or fact throws. */
  t(key: string, facts?: Facts): string;
  /** A list of sentences. */
  list(key: string): readonly string[];
  /** The same for a part that may be absent; then no sentence. */
  some(key: string): readonly string[];
  /** Whether there is such a sentence: names from old releases may have lost theirs. */
  has(key: string): boolean;
  /** The same with a guide's own faults and checks (`<guide>.faults`) among the diagnosis' words. */
  forGuide(guide: string): Words;
}

/** What `Words.astro` writes: namespace → sentences, nested. The first namespace is the default. */
export interface Carried {
  readonly language: string;
  readonly texts: Readonly<Record<string, unknown>>;
}

function missing(key: string): never {
  throw new RangeError(`No sentence for "${key}".`);
}

function asObject(value: unknown): object {
  return typeof value === 'object' && value !== null ? value : {};
}

function step(inside: unknown, name: string): unknown {
  // `hasOwn`: a name may come from an address, and every object has a `constructor`.
  return typeof inside === 'object' && inside !== null && Object.hasOwn(inside, name)
    ? (inside as Record<string, unknown>)[name]
    : undefined;
}

/** Make `t` of sentences; keys as in i18next, `namespace:part.part`. */
export function makeWords({ language, texts }: Carried): Words {
  const [first = ''] = Object.keys(texts);
  const plural = new Intl.PluralRules(language);
  const find = (key: string): unknown => {
    const [whole = '', own = first] = key.split(':').toReversed();
    // Another guide's sentences, as a guide that hands over to it calls them.
    const { guide: space = own, name: path } = split(whole);
    return path.split('.').reduce(step, step(texts, space));
  };
  return {
    language,
    t(key, facts = {}) {
      const { count } = facts;
      const counted =
        typeof count === 'number' ? find(`${key}_${plural.select(count)}`) : undefined;
      const sentence = counted ?? find(key);
      if (typeof sentence !== 'string') return missing(key);
      return sentence.replace(/\{\{(\w+)\}\}/g, (_, name: string) =>
        String(Object.hasOwn(facts, name) ? facts[name] : missing(`${key} {{${name}}}`)),
      );
    },
    list(key) {
      const sentences = find(key);
      return Array.isArray(sentences) ? (sentences as readonly string[]) : missing(key);
    },
    some(key) {
      const sentences = find(key);
      return Array.isArray(sentences) ? (sentences as readonly string[]) : [];
    },
    has: (key) => typeof find(key) === 'string',
    forGuide(guide) {
      const diagnosis = { ...asObject(texts['diagnosis']), ...asObject(texts[`${guide}.faults`]) };
      return makeWords({ language, texts: { ...texts, diagnosis } });
    },
  };
}

/** The page's own sentences, and others that were loaded since, by namespace. */
export function pageWords(loaded: Carried['texts'] = {}): Words {
  const { language, texts } = embedded('words') as Carried;
  return makeWords({ language, texts: { ...texts, ...loaded } });
}

/** `t` of a part's page; `props` stay tracked. */
export function sayer(props: { readonly page: { readonly words: Words } }): Words['t'] {
  return (key, facts) => props.page.words.t(key, facts);
}
