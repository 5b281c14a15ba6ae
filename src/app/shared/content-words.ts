/**
 * Sentences under names that content gives: guides, nodes, details, flags; those of the diagnosis are
 * in `diagnosis-words.ts`. No compiler knows these names; the build's gates see to it that each has its sentences
 * in every language. A name out of an old release may have lost them: then the name itself stands.
 */
import { split } from '../../guide/ids.ts';
import type { Graph } from '../../guide/types.ts';
import type { Words } from './words.ts';

/** What was found, where it is a sentence. */
export function asText(found: unknown): string | undefined {
  return typeof found === 'string' ? found : undefined;
}

/** What was found, where it is a list of sentences; else none. */
export function asLines(found: unknown): readonly string[] {
  return Array.isArray(found) ? (found as readonly string[]) : [];
}

/** What a guide is called. */
export function guideName(words: Words, guide: string): string {
  return asText(words.content('guides', 'names', guide)) ?? guide;
}

/** The finder's groups of sayings, and the sayings. */
export function finderLabel(words: Words, part: 'groups' | 'sayings', id: string): string {
  return asText(words.content('guides', part, id)) ?? id;
}

/** What words ask of a guide and of a node: a build's guide or a codebook's. */
type GuideNamed = { readonly id: string } & Partial<Pick<Graph, 'start' | 'nodes'>>;
type NodeNamed = { readonly sentences: string };

/** One part of a node's sentences. Another guide's stand under that guide's name. */
function partOf(words: Words, guide: GuideNamed, node: NodeNamed, ...path: string[]): unknown {
  const { guide: owner = guide.id, name } = split(node.sentences);
  return words.content(owner, name, ...path);
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

/** A node's sentences, as far as the page carries them. */
export function nodeWords(words: Words, guide: GuideNamed, node: NodeNamed): NodeWords {
  const text = (part: string) => asText(partOf(words, guide, node, part));
  const lines = (part: string) => asLines(partOf(words, guide, node, part));
  return {
    title: text('title') ?? node.sentences,
    short: text('short') ?? node.sentences,
    why: text('why') ?? '',
    callNote: text('callNote') ?? '',
    help: lines('help'),
    care: lines('care'),
    lines: lines('lines'),
    now: lines('now'),
    never: lines('never'),
  };
}

/** An answer's words. An exit is worded where the guide starts, not at the node it was given at. */
export function answerWords(
  words: Words,
  guide: GuideNamed,
  node: NodeNamed,
  answer: string,
): string {
  const at = (place: NodeNamed) => asText(partOf(words, guide, place, 'answers', answer));
  const start = guide.start && guide.nodes?.get(guide.start);
  return at(node) ?? (start && at(start)) ?? answer;
}

/** Whose words for a detail: the homeowner's, who is asked, or the staff's. */
export type Reader = 'note' | 'preview';
const NAMED = { note: 'label', preview: 'name' } as const;

/** What an optional detail is called. */
export function detailName(words: Words, reader: Reader, detail: string): string {
  return asText(words.content(reader, 'details', detail, NAMED[reader])) ?? detail;
}

/** What a detail's answer is called. */
export function detailAnswer(words: Words, reader: Reader, detail: string, answer: string): string {
  return asText(words.content(reader, 'details', detail, 'answers', answer)) ?? answer;
}

/** What a safety flag says. */
export function flagWords(words: Words, flag: string): string {
  return asText(words.content('preview', 'flags', flag)) ?? flag;
}

/** What a made-up visit is called. */
export function demoName(words: Words, demo: string): string {
  return asText(words.content('preview', 'demo', 'list', demo)) ?? demo;
}
