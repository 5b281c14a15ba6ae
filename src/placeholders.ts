/**
 * `{{fact}}` in a sentence: the one reader of it, at build time, in the browser and in the checks.
 */
const PLACEHOLDER = /\{\{(\w+)\}\}/g;

/** What a sentence's placeholders stand for. */
export type Facts = Readonly<Record<string, string | number>>;

/** A sentence with its facts put in; `missing` says what stands for a fact that is not given. */
export const fill = (text: string, facts: Facts, missing: (name: string) => string): string =>
  text.replace(PLACEHOLDER, (_, name: string) =>
    // `hasOwn`: every object has a `constructor`.
    String(Object.hasOwn(facts, name) ? facts[name] : missing(name)),
  );

/** The names of a sentence's placeholders. */
export const placeholders = (text: string): Set<string> =>
  new Set([...text.matchAll(PLACEHOLDER)].map(([, name = '']) => name));

/** A sentence with each placeholder replaced: by its own name, as reading aloud would say it. */
export const spoken = (text: string, as = '$1'): string => text.replace(PLACEHOLDER, as);
