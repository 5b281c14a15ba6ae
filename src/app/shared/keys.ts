/**
 * The keys of sentences, made by the compiler from the English files, which all other languages are
 * translated from: a key that English does not have does not compile, in the browser and at build
 * time alike. Sentences under names that content gives (nodes, faults …) are no keys: those are
 * asked for in `content-words.ts`.
 */
import type about from '../../../content/text/en/about.json';
import type bench from '../../../content/text/en/bench.json';
import type care from '../../../content/text/en/care.json';
import type desk from '../../../content/text/en/desk.json';
import type diagnosis from '../../../content/text/en/diagnosis.json';
import type errors from '../../../content/text/en/errors.json';
import type fetching from '../../../content/text/en/fetching.json';
import type guides from '../../../content/text/en/guides.json';
import type job from '../../../content/text/en/job.json';
import type learn from '../../../content/text/en/learn.json';
import type map from '../../../content/text/en/map.json';
import type note from '../../../content/text/en/note.json';
import type offline from '../../../content/text/en/offline.json';
import type preview from '../../../content/text/en/preview.json';
import type round from '../../../content/text/en/round.json';
import type site from '../../../content/text/en/site.json';
import type staff from '../../../content/text/en/staff.json';
import type visits from '../../../content/text/en/visits.json';

/** Namespace → its sentences, a text file each. */
interface Texts {
  about: typeof about;
  bench: typeof bench;
  care: typeof care;
  desk: typeof desk;
  diagnosis: typeof diagnosis;
  errors: typeof errors;
  fetching: typeof fetching;
  guides: typeof guides;
  job: typeof job;
  learn: typeof learn;
  map: typeof map;
  note: typeof note;
  offline: typeof offline;
  preview: typeof preview;
  round: typeof round;
  site: typeof site;
  staff: typeof staff;
  visits: typeof visits;
}

/** A text file's name, the first part of a key. */
export type Namespace = keyof Texts;

/** The counted forms of a sentence (CLDR) share the key without the form. */
type Uncounted<K extends string> = K extends `${infer Base}_${Intl.LDMLPluralRule}` ? Base : K;

/** The dotted paths to all values of a kind. */
type Paths<T, Kind, K extends keyof T & string = keyof T & string> = K extends unknown
  ? T[K] extends Kind
    ? Uncounted<K>
    : T[K] extends string | readonly unknown[]
      ? never
      : `${K}.${Paths<T[K], Kind>}`
  : never;

type KeyTo<Kind> = { [N in Namespace]: `${N}:${Paths<Texts[N], Kind>}` }[Namespace];

/** The key of one sentence, `namespace:path.to.sentence`. */
export type Key = KeyTo<string>;

/** The key of a list of sentences. */
export type ListKey = KeyTo<readonly string[]>;

/** What stands first in a namespace, a group or a sentence; a page can carry it alone: `site:page`. */
export type KeyPart = PartOf<Key | ListKey>;
type PartOf<K extends Key | ListKey> = K extends `${infer First}.${string}` ? First : K;
