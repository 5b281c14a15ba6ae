/**
 * Sentences under names that content gives: guides, nodes, details; what only staff read is in
 * `staff-words.ts`. No compiler knows these names; the build's gates see to it that each has its
 * sentences in every language. A name out of an old release may have lost them: then the name itself stands.
 */
import { parseId } from '../../guide/ids.ts';
import type { Graph } from '../../guide/types.ts';
import type { Words } from './words.ts';

/** The sentence at a place, or what stands in for it. */
export function said(words: Words, otherwise: string, ...path: [string, ...string[]]): string {
  const found = words.content(...path);
  return typeof found === 'string' ? found : otherwise;
}

/** What a guide is called. */
export function guideName(words: Words, guide: string): string {
  return said(words, guide, 'guides', 'names', guide);
}

/** The finder's groups of sayings, and the sayings. */
export function finderLabel(words: Words, part: 'groups' | 'sayings', id: string): string {
  return said(words, id, 'guides', part, id);
}

/** What words ask of a guide and of a node: a build's guide or a codebook's. */
type GuideNamed = { readonly id: string } & Partial<Pick<Graph, 'start' | 'nodes'>>;
interface NodeNamed {
  readonly sentences: string;
}

/** Where a node's sentences stand: another guide's under that guide's name. */
function placeOf(guide: GuideNamed, { sentences }: NodeNamed): [guide: string, node: string] {
  const { guide: owner = guide.id, name } = parseId(sentences);
  return [owner, name];
}

/** A node's sentences; parts that it lacks are empty. */
export interface NodeWords {
  readonly title: string;
  readonly short: string;
  readonly why: string;
  readonly callNote: string;
  readonly help: readonly string[];
  readonly care: readonly string[];
  readonly lines: readonly string[];
  readonly now: readonly string[];
  readonly never: readonly string[];
}

const NOTHING = { why: '', callNote: '', help: [], care: [], lines: [], now: [], never: [] };

/** A node's sentences, as far as the page carries them; the build has checked their shape. */
export function nodeWords(words: Words, guide: GuideNamed, node: NodeNamed): NodeWords {
  const own = words.content(...placeOf(guide, node)) as Partial<NodeWords> | undefined;
  return { ...NOTHING, title: node.sentences, short: node.sentences, ...own };
}

/** An answer's words. An exit is worded where the guide starts, not at the node it was given at. */
export function answerWords(
  words: Words,
  guide: GuideNamed,
  node: NodeNamed,
  answer: string,
): string {
  const start = guide.start && guide.nodes?.get(guide.start);
  const at = (place: NodeNamed, otherwise: string) =>
    said(words, otherwise, ...placeOf(guide, place), 'answers', answer);
  return at(node, start ? at(start, answer) : answer);
}

/** What was asked at a step of a journey, in short, and what was answered. */
export function stepWords(
  words: Words,
  guide: GuideNamed,
  { node, edge }: { readonly node: NodeNamed; readonly edge: { readonly id: string } },
): [asked: string, answer: string] {
  return [nodeWords(words, guide, node).short, answerWords(words, guide, node, edge.id)];
}

/** Whose words for a detail: the homeowner's, who is asked, or the staff's. */
export type Reader = 'note' | 'preview';
const NAMED = { note: 'label', preview: 'name' } as const;

/** What an optional detail is called. */
export function detailName(words: Words, reader: Reader, detail: string): string {
  return said(words, detail, reader, 'details', detail, NAMED[reader]);
}

/** What a detail's answer is called. */
export function detailAnswer(words: Words, reader: Reader, detail: string, answer: string): string {
  return said(words, answer, reader, 'details', detail, 'answers', answer);
}
