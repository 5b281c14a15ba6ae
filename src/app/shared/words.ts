/**
 * The sentences a page carries (see `site/parts/Words.astro`), for the parts that run in the
 * browser. They are written for i18next, which reads them at build time; what the browser needs of
 * it is this little. i18next itself would take 12 kB, a third of what a note page may weigh.
 */
import { fill, type Facts } from '../../placeholders.ts';
import { embedded } from './embedded.ts';
import type { Key, ListKey } from './keys.ts';

/** A language's sentences, the same at build time and in the browser. */
export interface Words {
  /** A tag (BCP 47), with a region where the sentences keep to one. */
  readonly language: string;
  /**
   * One sentence. Counted ones (`_one`, `_other` …) take `count`. Throws where a fact is missing,
   * and where the page does not carry the key's namespace.
   */
  readonly t: (key: Key, facts?: Facts) => string;
  /** A list of sentences; throws as `t` does. */
  readonly list: (key: ListKey) => readonly string[];
  /** A pattern, in one group, of what is English in them; for `marked.tsx` alone. */
  readonly english?: string | undefined;
  /** What stands under names that only content knows. For `content-words.ts` alone. */
  readonly content: (namespace: string, ...path: readonly string[]) => unknown;
}

/** What a page embeds: namespace → sentences, nested. */
export interface Embedded {
  readonly language: string;
  readonly texts: Readonly<Record<string, unknown>>;
  readonly english?: string;
}

function missing(key: string): never {
  throw new RangeError(`No sentence for "${key}".`);
}

function step(inside: unknown, name: string): unknown {
  // `hasOwn`: a name may come from an address, and every object has a `constructor`.
  return typeof inside === 'object' && inside !== null && Object.hasOwn(inside, name)
    ? (inside as Record<string, unknown>)[name]
    : undefined;
}

/** The words of what a page embeds. */
export function makeWords({ language, texts, english }: Embedded): Words {
  const plural = new Intl.PluralRules(language);
  const find = (key: string): unknown => key.split(/[:.]/).reduce(step, texts);
  return {
    language,
    english,
    t(key, facts = {}) {
      const { count } = facts;
      const counted =
        typeof count === 'number' ? find(`${key}_${plural.select(count)}`) : undefined;
      const sentence = counted ?? find(key);
      if (typeof sentence !== 'string') return missing(key);
      return fill(sentence, facts, (name) => missing(`${key} {{${name}}}`));
    },
    list(key) {
      const sentences = find(key);
      return Array.isArray(sentences) ? (sentences as readonly string[]) : missing(key);
    },
    content: (...path) => path.reduce<unknown>(step, texts),
  };
}

/** The page's own sentences, and others that were loaded since, by namespace. */
export function pageWords(loaded: Embedded['texts'] = {}): Words {
  const own = embedded('words') as Embedded;
  return makeWords({ ...own, texts: { ...own.texts, ...loaded } });
}

/** `t` of a part's page; `props` stay tracked. */
export function sayer(props: { readonly page: { readonly words: Words } }): Words['t'] {
  return (key, facts) => props.page.words.t(key, facts);
}
