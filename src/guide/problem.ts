/** A place in a file, both counted from 1 as editors do. */
export interface SourcePosition {
  readonly line: number;
  readonly column: number;
}

/**
 * What can be wrong with a guide's file. `path` is the way to the value inside
 * the file, keys joined by dots. `node` is always a name as the author wrote it.
 */
export type GuideTrouble =
  /** Not YAML as it is taken here: see `SyntaxFault` in `yaml.ts`. */
  | { readonly code: 'yaml-syntax'; readonly reason: string; readonly first?: SourcePosition }
  | { readonly code: 'key-missing'; readonly path: string; readonly key: string }
  | { readonly code: 'key-unknown'; readonly path: string; readonly key: string }
  | { readonly code: 'value-wrong'; readonly path: string; readonly expected: string }
  | {
      readonly code: 'value-unknown';
      readonly path: string;
      readonly allowed: readonly string[];
    }
  /** Names are lower-case letters, digits and single hyphens, and not a bare number. */
  | { readonly code: 'name-malformed'; readonly path: string; readonly name: string }
  | { readonly code: 'stop-without-call'; readonly node: string }
  | { readonly code: 'step-without-action'; readonly node: string }
  | { readonly code: 'unsure-missing'; readonly node: string }
  | { readonly code: 'end-with-answers'; readonly node: string }
  | { readonly code: 'start-unknown'; readonly start: string }
  | { readonly code: 'start-not-question'; readonly start: string }
  | { readonly code: 'track-repeated'; readonly track: string }
  | { readonly code: 'track-unknown'; readonly path: string; readonly track: string }
  | {
      readonly code: 'target-unknown';
      readonly node: string;
      readonly answer: string;
      readonly target: string;
    }
  /** `to` is a map without an entry for a track on which the answer is given. */
  | {
      readonly code: 'target-missing';
      readonly node: string;
      readonly answer: string;
      readonly track: string;
    }
  | {
      readonly code: 'wrong-track';
      readonly node: string;
      readonly answer: string;
      readonly target: string;
      readonly track: string;
      readonly only: string;
    }
  | { readonly code: 'text-unknown'; readonly node: string; readonly text: string }
  | { readonly code: 'fact-set-and-cleared'; readonly node: string; readonly fact: string }
  /** A flag that is not in `content/flags.yaml`; `answer` is absent where a stop raises it. */
  | {
      readonly code: 'flag-unknown';
      readonly node: string;
      readonly answer?: string;
      readonly flag: string;
      readonly known: readonly string[];
    }
  | { readonly code: 'flag-repeated'; readonly flag: string }
  /** An answer with the name of a danger answer would hide it on that page. */
  | { readonly code: 'danger-hidden'; readonly node: string; readonly answer: string }
  | { readonly code: 'name-taken'; readonly node: string; readonly id: string }
  | { readonly code: 'node-unreachable'; readonly node: string }
  /** The nodes of the loop, each leading to the next and the last to the first. */
  | { readonly code: 'loop'; readonly nodes: readonly string[] }
  /** `entries` names what is no question, step or end of this guide. */
  | { readonly code: 'entry-missing'; readonly entry: string }
  /** `optional` names a page that the guide does not have, or leads to one that is gone. */
  | { readonly code: 'optional-unknown'; readonly name: string }
  /** A rule names a page or an answer that the guide does not have. */
  | { readonly code: 'rule-unknown'; readonly name: string }
  | BlockTrouble
  | JoinTrouble;

/** What can be wrong with blocks and with how a guide takes them. */
export type BlockTrouble =
  /** A guide's own page with the name of a block's: the two would become unlike each other. */
  | { readonly code: 'page-of-block'; readonly node: string; readonly block: string }
  /** A page with the name of one in another block. */
  | { readonly code: 'page-repeated'; readonly node: string; readonly block: string }
  | { readonly code: 'block-unknown'; readonly block: string; readonly known: readonly string[] }
  | {
      readonly code: 'exit-unknown';
      readonly block: string;
      readonly exit: string;
      readonly known: readonly string[];
    }
  /** A guide takes a page with an exit that it does not wire. */
  | {
      readonly code: 'exit-unwired';
      readonly block: string;
      readonly exit: string;
      readonly node: string;
      readonly answer: string;
    }
  /** No page leads to the exit: none of the block's, or none of those that a guide takes. */
  | { readonly code: 'exit-unused'; readonly block: string; readonly exit: string }
  /** No guide has the pages that a block's rule names. */
  | { readonly code: 'rule-unused'; readonly block: string };

/** What can be wrong with answers that lead into another guide. */
export type JoinTrouble =
  | {
      readonly code: 'guide-unknown';
      readonly node: string;
      readonly answer: string;
      readonly guide: string;
    }
  /** The other guide does not list the node among its `entries`. */
  | {
      readonly code: 'entry-unknown';
      readonly node: string;
      readonly answer: string;
      readonly guide: string;
      readonly target: string;
      readonly entries: readonly string[];
    }
  /** No journey of the other guide comes to its node on that track; '' is its first one. */
  | {
      readonly code: 'entry-off-track';
      readonly node: string;
      readonly answer: string;
      readonly guide: string;
      readonly target: string;
      readonly track: string;
    }
  /** The two guides have different danger answers, so a page would offer the wrong ones. */
  | {
      readonly code: 'dangers-differ';
      readonly node: string;
      readonly answer: string;
      readonly guide: string;
    }
  /** Each guide hands over to the next, and the last to the first. */
  | { readonly code: 'guide-circle'; readonly guides: readonly string[] };

export type GuideProblem = GuideTrouble & { readonly file: string; readonly place: SourcePosition };
