/** A job in words, plain text to paste anywhere. */
import type { Job } from '../../visit/job.ts';
import type { VisitView } from '../../visit/read-visit.ts';
import { callerFields } from '../../visit/job.ts';
import type { BookGuide, BookNode } from '../../note/library.ts';
import type { Words } from '../shared/words.ts';
import { answerOf } from '../note/sentences.ts';
import { shortOf } from '../preview/sentences.ts';

/** What the caller was told at the end, in the guide's words. */
function toldLines(words: Words, guide: BookGuide, end: BookNode): readonly string[] {
  const key = `${guide.id}:${end.sentences}`;
  return ['now', 'lines', 'never'].flatMap((part) => words.some(`${key}.${part}`));
}

/** The text of a job, its lines joined by line feeds. */
export function jobText(words: Words, { guide, steps, end }: VisitView, job: Job): string {
  const t = (key: string, facts?: Record<string, string>) => words.t(`job.${key}`, facts);
  const line = (asked: string, answer: string) => t('line', { asked, answer });
  const short = (node: BookNode) => shortOf(words, guide, node);
  const answers = steps.map(({ node, edge }): [string, string] => [
    short(node),
    answerOf(words, guide, node, edge.id),
  ]);
  const [asked = '', answer = ''] = answers.at(-1) ?? [];
  const at = short(end);
  const outcome = job.outcome.kind === 'open' ? t('open', { at }) : at;
  const listed = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', t(title).toUpperCase(), ...lines];
  const names = (ids: readonly string[]) =>
    ids.flatMap((id) => guide.nodes.get(id as never) ?? []).map(short);
  const unread = names(job.cautions.unread);
  return [
    t('heading', { urgency: words.t(`urgency.${job.urgency}`).toUpperCase(), outcome }),
    t('because', { asked, answer }),
    ...(job.breakerStaysOff ? [t('breakerOff')] : []),
    t('code', { code: job.code, back: t(job.codeReadBack ? 'readBack' : 'notReadBack') }),
    t('made', { date: job.made }),
    ...listed(
      'caller',
      callerFields.flatMap((field) => {
        const text = job.caller[field];
        return text === undefined ? [] : [line(words.t(`caller.${field}`), text)];
      }),
    ),
    ...listed('answers', [
      ...answers.map(([question, said]) => line(question, said)),
      ...(job.error === '' ? [] : [t('display', { error: job.error })]),
    ]),
    ...listed(
      'details',
      Object.entries(job.details).map(([id, said]) =>
        line(
          words.t(`preview:details.${id}.name`),
          words.t(`preview:details.${id}.answers.${said}`),
        ),
      ),
    ),
    ...listed(
      'toldTitle',
      toldLines(words, guide, end).map((told) => `- ${told}`),
    ),
    ...(unread.length === 0 ? [] : ['', t('unread', { list: unread.join('; ') })]),
  ].join('\n');
}
