/** What a code says in words, for the screen and for paper. */
import type { Note, Reading } from '../../note/types.ts';
import { callerFields, type Caller } from '../../visit/job.ts';
import type { VisitView } from '../../visit/read-visit.ts';
import { answerWords, detailAnswer, detailName, nodeWords } from '../shared/content-words.ts';
import { flagWords } from '../shared/staff-words.ts';
import type { Words } from '../shared/words.ts';
import type { Page } from './page.ts';
import type { Extras } from './state.ts';
import type { DiagnosisState } from './visit.ts';

/** What a visit's parts show: the note, and the diagnosis where the figures know the complaint. */
export interface VisitProps {
  readonly page: Page;
  readonly reading: Extract<Reading, { kind: 'exact' }>;
  readonly extras: Extras;
  readonly view: VisitView;
  readonly visit: DiagnosisState | undefined;
}

/** How the journey stands, in words. */
export function outcomeWords(words: Words, { guide, state, end }: VisitView): string {
  const title = nodeWords(words, guide, end).short;
  return state === 'open' ? words.t('preview:outcome.next', { title }) : title;
}

/** Dangers and flags, in the order staff see them. */
export function flagLines(words: Words, { danger, guide, flags }: VisitView): string[] {
  const reported = danger && {
    what: answerWords(words, guide, danger.node, danger.edge.id),
  };
  return [
    ...(reported ? [words.t('preview:flags.danger', reported)] : []),
    ...flags.map((flag) => flagWords(words, flag)),
  ];
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
export function knownFacts(words: Words, caller: Caller, note: Note | undefined): Known[] {
  const came = callerFields.map((field): Known => ({
    id: field,
    label: PLAIN.includes(field) ? '' : `${words.t(`job:lines.${field}`)}:`,
    text: caller[field] ?? '',
  }));
  const details = Object.entries(note?.details ?? {}).map(([id, answer]) => ({
    id,
    label: PLAIN.includes(id) ? '' : `${detailName(words, 'preview', id)}:`,
    text: detailAnswer(words, 'preview', id, answer),
  }));
  return [...came, ...details].filter(({ text }) => text !== '');
}
