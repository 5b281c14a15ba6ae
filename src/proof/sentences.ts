import type { GuideNode, NodeKind } from '../guide/types.ts';

/** The sentences of one page, as far as the proof reads them. */
export interface NodeSentences {
  readonly short?: string | undefined;
  readonly title?: string | undefined;
  readonly help?: readonly string[] | undefined;
  readonly why?: string | undefined;
  readonly lines?: readonly string[] | undefined;
  readonly now?: readonly string[] | undefined;
  readonly never?: readonly string[] | undefined;
  readonly care?: readonly string[] | undefined;
  readonly callNote?: string | undefined;
  readonly answers?: Readonly<Record<string, string>> | undefined;
}

/** A guide's sentences in one language, by the nodes' text keys. */
export type GuideSentences = Readonly<Record<string, NodeSentences>>;

/** What the proof needs to judge a guide's words. */
export interface GuideText {
  readonly sentences: GuideSentences;
  /** Reading grade of some passages taken together. */
  readonly grade: (passages: readonly string[]) => number;
}

/** One sentence or a list of them; with `?` a page can do without. */
export type PartShape = 'one' | 'list' | 'one?' | 'list?';
type Parts = Readonly<Partial<Record<Exclude<keyof NodeSentences, 'answers'>, PartShape>>>;

/** What every page says, in the technician's list, as its heading, and in a caution box. */
const common = { short: 'one', title: 'one', care: 'list?' } as const;
const parts: Readonly<Record<NodeKind, Parts>> = {
  question: { ...common, help: 'list?', why: 'one' },
  step: { ...common, lines: 'list', why: 'one' },
  stop: { ...common, callNote: 'one?', now: 'list', never: 'list' },
  finish: { ...common, lines: 'list', never: 'list' },
};

/** The sentences a node's page has, its answers' labels left out. */
export function pageParts({ kind, caution }: Pick<GuideNode, 'kind' | 'caution'>): Parts {
  const boxed = caution !== undefined && (kind === 'question' || kind === 'step');
  return boxed ? { ...parts[kind], care: 'list' } : parts[kind];
}

function said(value: unknown): boolean {
  if (Array.isArray(value)) return value.length > 0 && value.every(said);
  return typeof value === 'string' && value.trim() !== '';
}

/** Keys of sentences that a node's page needs and does not have, or has only empty. */
export function missingKeys(node: GuideNode, sentences: NodeSentences | undefined): string[] {
  const keys = Object.entries(pageParts(node))
    .filter(([, shape]) => !shape.endsWith('?'))
    .map(([key]) => key as keyof NodeSentences);
  const answers = node.answers.map(({ id }) => id);
  const own = sentences?.answers ?? {};
  return [
    ...keys.filter((key) => !said(sentences?.[key])),
    ...answers
      .filter((id) => !(Object.hasOwn(own, id) && said(own[id])))
      .map((id) => `answers.${id}`),
  ];
}

/** What tells the reader to do something: the answers are the reader's own words. */
export function told(sentences: NodeSentences): string[] {
  const { title, help, why, lines, now, never, care, callNote } = sentences;
  const single = [title, why, callNote].filter((text) => text !== undefined);
  const many = [help, lines, now, never, care];
  return [...single, ...many.flatMap((texts) => texts ?? [])];
}

/** Every passage of a page. */
export function passages(sentences: NodeSentences): string[] {
  return [...told(sentences), ...Object.values(sentences.answers ?? {})];
}

/**
 * A page's reading grade: the higher of its running text alone and with the answers,
 * so that short answers cannot make up for hard sentences, nor the reverse.
 */
export function pageGrade(sentences: NodeSentences, grade: GuideText['grade']): number {
  return Math.max(grade(told(sentences)), grade(passages(sentences)));
}
