/**
 * The frozen codebook: what the numbers in a release's codes mean. A release is
 * never edited, so every code ever issued can be read for good. Only structure
 * is frozen; the sentences belong to the `text` keys.
 */
import type { NodeKind, Urgency } from '../guide/types.ts';

/** What a page and its answers tell staff besides the way on: fields of the guide's nodes. */
export interface PageMarks {
  readonly heat?: true | undefined;
  readonly flag?: string | undefined;
  readonly answers?: Readonly<Record<string, AnswerMarks>> | undefined;
}

export interface AnswerMarks {
  readonly flag?: string | undefined;
  readonly heatEnded?: number | undefined;
}

/** An answer and the node it leads to, another guide's as `guide/node`. Lists, not objects: their order is part of the code. */
export type ReleaseAnswer = readonly [answer: string, to: string];

export interface ReleaseNode {
  readonly id: string;
  /** Its page, the same on all tracks; left out where it is the id, and in releases 1 to 4. */
  readonly page?: string | undefined;
  /** Questions and steps only: the track of this copy. Releases 1 to 4 have none. */
  readonly track?: string | undefined;
  /** Key of its sentences; left out where it is the id. */
  readonly text?: string | undefined;
  readonly kind: NodeKind;
  /** Stops and finishes only. */
  readonly urgency?: Urgency | undefined;
  /** Questions and steps only. */
  readonly answers?: readonly ReleaseAnswer[] | undefined;
  /** Left out where there are none, and in releases 1 to 4: those of these are in `retired.json`. */
  readonly marks?: PageMarks | undefined;
}

export interface ReleaseGuide {
  readonly id: string;
  readonly start: string;
  readonly nodes: readonly ReleaseNode[];
  /**
   * Danger answers possible at every question and step but the start, after the
   * node's own. Where a node has an answer of the same name, its own is meant.
   */
  readonly exits: readonly ReleaseAnswer[];
}

export interface ReleaseDetail {
  readonly id: string;
  readonly answers: readonly string[];
}

/** As in `content/releases/<release>.json`. */
export interface Release {
  /** 1 or more. */
  readonly release: number;
  /** ISO 8601 date. */
  readonly published: string;
  readonly details: readonly ReleaseDetail[];
  readonly guides: readonly ReleaseGuide[];
}
