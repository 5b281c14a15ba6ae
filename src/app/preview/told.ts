/** What a code says in words, for the screen and for paper. */
import type { Reading } from '../../note/types.ts';
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

/** What is known of the range and the customer: name and text of each. */
export function knownFacts({
  page: { words },
  reading: { note },
  extras,
}: Pick<VisitProps, 'page' | 'reading' | 'extras'>): (readonly [string, string])[] {
  const { model, remark } = extras;
  return [
    ...(model ? [[words.t('preview:long.model'), model] as const] : []),
    ...(remark ? [[words.t('preview:long.remark'), remark] as const] : []),
    ...Object.entries(note.details).map(
      ([id, answer]) =>
        [detailName(words, 'preview', id), detailAnswer(words, 'preview', id, answer)] as const,
    ),
  ];
}
