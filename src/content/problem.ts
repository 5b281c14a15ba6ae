import type { z } from 'zod';
import type { ModelProblem } from '../diagnosis/problem.ts';
import type { GuideTrouble, SourcePosition } from '../guide/problem.ts';
import type { Path } from '../guide/yaml.ts';
import type { Fault, PropertyId } from '../proof/property.ts';
import type { TranslationProblem } from '../text/translation.ts';
import type { PoorColor } from './colors.ts';
import type { Text } from './read.ts';
import type { RecallTrouble } from './recall.ts';

/** What can be wrong with a file of content by itself, or with a name in it. */
export type FileTrouble =
  | { readonly code: 'missing' | 'not-utf8' }
  /** The parser's own words or code. */
  | { readonly code: 'syntax'; readonly reason: string }
  /** `first` is the line of the same key before it. */
  | { readonly code: 'duplicate-key'; readonly first: number }
  | { readonly code: 'key-missing' | 'key-unknown'; readonly path: string; readonly key: string }
  /** Not what its schema asks for, in the schema library's words. */
  | { readonly code: 'shape'; readonly path: string; readonly reason: string }
  /** It names what nothing declares. */
  | { readonly code: 'name-unknown'; readonly name: string; readonly among: string }
  /** A drawing shows a deed, and its page does not ask for it. */
  | { readonly code: 'drawing-does'; readonly name: string }
  | { readonly code: 'release-misnamed' | 'release-missing'; readonly release: number }
  /** Files beside a graph are found by its folder's name. */
  | { readonly code: 'guide-misnamed'; readonly guide: string; readonly folder: string }
  /** Made-up answers that the newest release cannot write. */
  | { readonly code: 'demo-broken'; readonly id: string; readonly reason: string }
  /** A switch is off, and the newest release was frozen with it on. */
  | { readonly code: 'release-of-others'; readonly release: number; readonly switch: string }
  /** A hazard that nothing controls, or nothing shows to be controlled. */
  | {
      readonly code: 'hazard-open';
      readonly hazard: string;
      readonly lacks: 'controls' | 'evidence';
    }
  /** A page that warns of death or serious injury, or a property, that no such hazard names. */
  | { readonly code: 'hazard-none'; readonly what: 'page' | 'property'; readonly name: string }
  | RecallTrouble
  /** A flag that no answer and no stop raises. */
  | { readonly code: 'flag-unused'; readonly flag: string }
  | { readonly code: 'staff-language-first'; readonly language: string }
  | PoorColor
  | { readonly code: 'logo-heavy'; readonly bytes: number; readonly most: number }
  /** A sentence says what a region has another word for. */
  | { readonly code: 'region-word'; readonly region: string; readonly found: string }
  /** A region's phrase that no English sentence has any more. */
  | { readonly code: 'region-phrase'; readonly phrase: string }
  | {
      readonly code: 'region-emergency';
      readonly region: string;
      readonly numbers: readonly string[];
    }
  /** Only English is said in a region's words. */
  | { readonly code: 'region-language'; readonly region: string; readonly language: string }
  /** An id has no sentence; `by` is the file and line that declares the id. */
  | { readonly code: 'sentence-missing'; readonly key: string; readonly by: string }
  /** `sentence-of-block`: a guide's own, of a page that a block has the sentences of. */
  | {
      readonly code: 'sentence-empty' | 'sentence-unused' | 'sentence-of-block';
      readonly key: string;
    }
  /** A page that reads less easily than a formula's least score. */
  | {
      readonly code: 'too-hard';
      readonly page: string;
      readonly formula: string;
      readonly score: number;
      readonly least: number;
    };

/** A property that does not hold: its first fault, and a journey that shows it, in words. */
export interface ProofTrouble {
  readonly property: PropertyId;
  readonly fault: Fault;
  readonly guide: string;
  readonly journey: readonly string[];
  /** How many faults of the same property there are besides. */
  readonly more: number;
}

/** Something wrong in `content/`, where, and what it is. Words are in `tell.ts`. */
export type Problem = {
  readonly file: string;
  readonly place: SourcePosition;
  /** It is wrong only where these switches of `firm.yaml` are off. */
  readonly off?: readonly string[];
} & (
  | { readonly about: 'file'; readonly trouble: FileTrouble }
  | { readonly about: 'guide'; readonly trouble: GuideTrouble }
  | { readonly about: 'model'; readonly trouble: Pick<ModelProblem, 'path' | 'code' | 'facts'> }
  | { readonly about: 'proof'; readonly trouble: ProofTrouble }
  | { readonly about: 'translation'; readonly trouble: TranslationProblem }
);

/** A problem of a file, at a place of it. */
export function fileProblem(
  { file }: Pick<Text, 'file'>,
  place: SourcePosition,
  trouble: FileTrouble,
): Problem {
  return { file, place, about: 'file', trouble };
}

/** A name at a path of a text that is not among what declares such names. */
export const nameUnknown = (
  text: Pick<Text, 'file' | 'valueAt'>,
  path: Path,
  name: string,
  among: string,
): Problem => fileProblem(text, text.valueAt(path), { code: 'name-unknown', name, among });

/** The value at a path, undefined where there is none; names that objects inherit are none. */
export function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (inner, key) =>
      typeof inner === 'object' && inner !== null && Object.hasOwn(inner, key)
        ? (inner as Record<PropertyKey, unknown>)[key]
        : undefined,
    value,
  );
}

/** What a schema found in a text, each with its place. */
export function shapeProblems(text: Text, issues: readonly z.core.$ZodIssue[]): readonly Problem[] {
  return issues.flatMap((issue): Problem[] => {
    const path = issue.path.map(String).join('.');
    if (issue.code === 'unrecognized_keys')
      return issue.keys.map((key) =>
        fileProblem(text, text.keyAt([...issue.path, key]), { code: 'key-unknown', path, key }),
      );
    const key = issue.path.at(-1);
    if (key !== undefined && valueAt(text.value, issue.path) === undefined) {
      const parent = issue.path.slice(0, -1);
      const trouble = { code: 'key-missing', path: parent.map(String).join('.') } as const;
      return [fileProblem(text, text.keyAt(parent), { ...trouble, key: String(key) })];
    }
    // Of a key that is no good only the issue within says why.
    const within = issue.code === 'invalid_key' ? issue.issues[0]?.message : undefined;
    const trouble = { code: 'shape', path, reason: within ?? issue.message } as const;
    return [fileProblem(text, text.valueAt(issue.path), trouble)];
  });
}
