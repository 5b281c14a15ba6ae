/** What a code says in words, for the screen and for paper. */
import type { Note, NoteCode } from '../../note/types.ts';
import { callerFields, type Caller } from '../../visit/job.ts';
import type { VisitView } from '../../visit/read-visit.ts';
import { answerWords, detailAnswer, detailName, nodeWords } from '../shared/content-words.ts';
import { flagWords } from '../shared/staff-words.ts';
import type { Words } from '../shared/words.ts';

/** A problem of a visit: its code, and what the code says. */
export interface Coded {
  readonly code: NoteCode;
  readonly seen: VisitView;
}

/** Those of a visit, the most urgent first. */
export type Problems = readonly [Coded, ...Coded[]];

/** What is told of one of a visit's problems, its complaint before it where there are several. */
export const named = (complaint: string | undefined, text: string): string =>
  complaint === undefined ? text : `${complaint}: ${text}`;

/** How the journey stands, in words. */
export function outcomeWords(words: Words, { guide, state, end }: VisitView): string {
  const title = nodeWords(words, guide, end).short;
  return state === 'open' ? words.t('preview:outcome.next', { title }) : title;
}

/** Dangers and flags of all problems, each once, in the order staff see them. */
export function flagLines(words: Words, problems: readonly Coded[]): readonly string[] {
  const lines = problems.flatMap(({ seen: { danger, guide, flags } }) => {
    const reported = danger && {
      what: answerWords(words, guide, danger.node, danger.edge.id),
    };
    return [
      ...(reported ? [words.t('preview:flags.danger', reported)] : []),
      ...flags.map((flag) => flagWords(words, flag)),
    ];
  });
  return [...new Set(lines)];
}

/** What says by itself what it is of. */
const PLAIN: readonly string[] = ['name', 'phone', 'address', 'fuel', 'kind', 'controls', 'age'];

interface Known {
  /** A detail's or a field's name. */
  readonly id: string;
  /** '' where the text says by itself what it is of. */
  readonly label: string;
  readonly text: string;
}

/** What is known of the range and the customer besides the answers. */
export function knownFacts(words: Words, caller: Caller, notes: readonly Note[]): Known[] {
  const came = callerFields.map((field): Known => ({
    id: field,
    label: PLAIN.includes(field) ? '' : `${words.t(`job:lines.${field}`)}:`,
    text: caller[field] ?? '',
  }));
  const told = Object.assign({}, ...notes.map(({ details }) => details)) as Note['details'];
  const details = Object.entries(told).map(([id, answer]) => ({
    id,
    label: PLAIN.includes(id) ? '' : `${detailName(words, 'preview', id)}:`,
    text: detailAnswer(words, 'preview', id, answer),
  }));
  return [...came, ...details].filter(({ text }) => text !== '');
}
