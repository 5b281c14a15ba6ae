/**
 * The grammar of what an address carries after `#`: `key=value` pairs joined by `&`, the values
 * percent-encoded. Every key is named here and nowhere else. Light enough for question pages, which
 * pass values on without looking into them; `fragment.ts` reads what they mean.
 */

/** Every key, in the order they are written in. */
export const KEYS = [
  /** The answer of a tap that came before the page's script had run: `node.answer`. */
  'a',
  /** What was said on the first page: the answer that it gives to the guide, `page.answer`. */
  's',
  /** The guide the journey began in. */
  'g',
  /** The journey: `node.answer` pairs joined by `~`. */
  'j',
  /** The display's text. */
  'e',
  /** Details: `detail.answer` pairs joined by `~`. */
  'd',
  /** The day the note was made. */
  'on',
  /** A running timer. */
  'w',
  /** A note code. */
  'c',
  /** Model number. */
  'm',
  /** Remark. */
  'r',
  /** Under which name the tab stores `m` and `r`. */
  'k',
] as const;
export type FragmentKey = (typeof KEYS)[number];

/** Texts by their keys, decoded and not yet looked into. An empty text is as good as none. */
export type Values<Key extends string> = Readonly<Partial<Record<Key, string | undefined>>>;
export type RawFragment = Values<FragmentKey>;

/**
 * Characters that are read. Hostile addresses cost nothing to refuse: a character is up to 12 bytes
 * (UTF-8, percent-encoded), so all free texts are 10,560, and a journey and details fit beside.
 */
export const MOST = 16_384;

/** A guide's, answer's or detail's name: what the loader lets through, and no longer. */
export const NAME = /^[a-z0-9-]{1,60}$/;
/** A node's name; that of another guide's node is `guide/node`. */
export const NODE_NAME = /^[a-z0-9-]{1,60}(?:\/[a-z0-9-]{1,60})?$/;

export const withoutHash = (hash: string): string => hash.replace(/^#/, '');

/**
 * The values of these keys, with or without the `#` before them. Never throws: other keys are passed
 * over, of a key that stands twice the first counts, and nothing is read beyond `MOST`.
 */
export function parseValues<Key extends string>(hash: string, keys: readonly Key[]): Values<Key> {
  const given = new URLSearchParams(withoutHash(hash).slice(0, MOST));
  const values: Partial<Record<Key, string>> = {};
  for (const key of keys) {
    const value = given.get(key);
    if (value) values[key] = value;
  }
  return values;
}

/**
 * Writes what `parseValues` reads, as a link's `#…`, in the order of the keys; '' where there is
 * nothing to write: an address that ends there has no fragment. A slash may stand in a fragment as it is (RFC 3986, section 3.5); half a surrogate pair,
 * which no address can hold, becomes U+FFFD.
 */
export function formatValues<Key extends string>(
  values: Values<Key>,
  keys: readonly Key[],
): string {
  const text = keys
    .filter((key) => values[key])
    .map((key) => {
      const text = (values[key] ?? '').replace(/\p{Surrogate}/gu, '\ufffd');
      return `${key}=${encodeURIComponent(text).replaceAll('%2F', '/')}`;
    })
    .join('&');
  return text && `#${text}`;
}

export const parseRaw = (hash: string): RawFragment => parseValues(hash, KEYS);

export const hashOf = (raw: RawFragment): string => formatValues(raw, KEYS);
