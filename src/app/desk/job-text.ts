/** A job in words, plain text to paste anywhere. */
import type { Job } from '../../visit/job.ts';
import type { VisitView } from '../../visit/read-visit.ts';
import { callerFields, payers } from '../../visit/job.ts';
import type { CodebookNode } from '../../note/codebook.ts';
import type { Key } from '../shared/keys.ts';
import type { Words } from '../shared/words.ts';
import { answerWords, detailAnswer, detailName, nodeWords } from '../shared/content-words.ts';

/** The text of a job, its lines joined by line feeds. */
export function jobText(words: Words, { guide, steps, end }: VisitView, job: Job): string {
  const { t } = words;
  const line = (asked: string, answer: string) => t('desk:job.line', { asked, answer });
  const short = (node: CodebookNode) => nodeWords(words, guide, node).short;
  const answers = steps.map(({ node, edge }): [string, string] => [
    short(node),
    answerWords(words, guide, node, edge.id),
  ]);
  const [asked = '', answer = ''] = answers.at(-1) ?? [];
  const told = nodeWords(words, guide, end);
  const at = told.short;
  const outcome = job.outcome.kind === 'open' ? t('desk:job.open', { at }) : at;
  const listed = (title: Key, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', t(title).toUpperCase(), ...lines];
  const names = (ids: readonly string[]) =>
    ids.flatMap((id) => guide.nodes.get(id as never) ?? []).map(short);
  const unread = names(job.cautions.unread);
  return [
    t('desk:job.heading', { urgency: t(`desk:urgency.${job.urgency}`).toUpperCase(), outcome }),
    t('desk:job.because', { asked, answer }),
    ...(job.breakerStaysOff ? [t('desk:job.breakerOff')] : []),
    t('desk:job.code', {
      code: job.code,
      back: t(job.codeReadBack ? 'desk:job.readBack' : 'desk:job.notReadBack'),
    }),
    t('desk:job.made', { date: job.made }),
    ...listed(
      'desk:job.caller',
      callerFields.flatMap((field) => {
        const text = job.caller[field];
        if (text === undefined) return [];
        const payer = field === 'pays' ? payers.find((name) => name === text) : undefined;
        const told = payer ? t(`desk:caller.payers.${payer}`) : text.replaceAll('\n', ' / ');
        return [line(t(`desk:caller.${field}`), told)];
      }),
    ),
    ...listed('desk:job.answers', [
      ...answers.map(([question, said]) => line(question, said)),
      ...(job.error === '' ? [] : [t('desk:job.display', { error: job.error })]),
    ]),
    ...listed(
      'desk:job.details',
      Object.entries(job.details).map(([id, said]) =>
        line(detailName(words, 'preview', id), detailAnswer(words, 'preview', id, said)),
      ),
    ),
    ...listed(
      'desk:job.toldTitle',
      [...told.now, ...told.lines, ...told.never].map((sentence) => `- ${sentence}`),
    ),
    ...(unread.length === 0 ? [] : ['', t('desk:job.unread', { list: unread.join('; ') })]),
  ].join('\n');
}
