/** A job in words: plain text to paste anywhere, which `visit/hand-over.ts` reads back. */
import { hashOf } from '../../address/grammar.ts';
import type { CodebookNode } from '../../note/codebook.ts';
import { jobLines, joined, type Labels } from '../../visit/hand-over.ts';
import { callerFields, linesOf, oneLine, type Job } from '../../visit/job.ts';
import type { VisitView } from '../../visit/read-visit.ts';
import { detailAnswer, detailName, guideName, nodeWords, stepWords } from './content-words.ts';
import type { Key } from './keys.ts';
import { flagWords, name } from './staff-words.ts';
import type { Words } from './words.ts';

/** What the lines of a job's text are called. */
export const jobLabels = ({ t }: Pick<Words, 't'>): Labels =>
  Object.fromEntries(
    ([...jobLines, ...callerFields, 'none'] as const).map((line) => [line, t(`job:lines.${line}`)]),
  ) as Labels;

/** Longer than any sentence of ours: only to make one line of what is not ours. */
const LONG = 2000;

/** Where the preview shows a code, as a whole address. */
export const previewLink = (code: string): string =>
  new URL(`../preview/${hashOf({ c: code })}`, location.href).href;

/** The text of a job, the most urgent things first; `others` are the same visit's other problems. */
export function jobText(
  words: Words,
  { guide, steps, end }: VisitView,
  job: Job,
  others: readonly VisitView[] = [],
): string {
  const { t } = words;
  const labels = jobLabels(words);
  const line = (asked: string, answer: string) => t('job:line', { asked, answer });
  /** A line of the top; none where there is nothing to say. */
  const top = (which: keyof Labels, text = '') =>
    text === '' ? [] : [line(labels[which], oneLine(text, LONG))];
  const short = (node: CodebookNode) => nodeWords(words, guide, node).short;
  const answers = steps.map((step) => stepWords(words, guide, step));
  const told = nodeWords(words, guide, end);
  const { outcome, codeReadBack: back } = job;
  const percent = new Intl.NumberFormat(words.language, { style: 'percent' });
  const listed = (title: Key, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', t(title).toUpperCase(), ...lines];
  const unread = (job.cautions?.unread ?? [])
    .flatMap((id) => guide.nodes.get(id as never) ?? [])
    .map(short);
  const code = joined([...(job.code ? [job.code] : []), ...(job.also ?? [])]) || labels.none;
  return [
    ...top(
      'job',
      t('job:heading', {
        urgency: t(`job:urgency.${job.urgency}`).toUpperCase(),
        complaint: [job.guide, ...others.map((one) => one.guide.id)]
          .map((id) => guideName(words, id))
          .join('; '),
      }),
    ),
    ...top('error', job.error),
    ...(outcome
      ? top('outcome', outcome.kind === 'open' ? t('job:open', { at: told.short }) : told.short)
      : []),
    ...answers.slice(-1).flatMap(([asked, answer]) => top('because', line(asked, answer))),
    ...top('breaker', job.breakerStaysOff === true ? t('job:breakerOff') : ''),
    ...top('flags', job.flags.map((flag) => flagWords(words, flag)).join('; ')),
    ...top('called', (job.called ?? '').replace('T', ' ')),
    ...top('answered', (job.answered ?? '').replace('T', ' ')),
    ...top('clerk', job.clerk),
    ...callerFields.flatMap((field) =>
      linesOf(job.caller[field] ?? '').map((text) => line(labels[field], text)),
    ),
    ...top(
      'parts',
      job.parts
        .map(({ part, chance }) => `${name(words, 'parts', part)}, ${percent.format(chance)}`)
        .join('; '),
    ),
    ...top(
      'code',
      job.code === undefined || back === undefined
        ? code
        : t('job:codeBack', { code, back: t(back ? 'job:readBack' : 'job:notReadBack') }),
    ),
    ...top('link', job.link),
    ...listed(
      'job:answers',
      answers.map(([question, said]) => line(question, said)),
    ),
    ...listed(
      'job:details',
      Object.entries(job.details).map(([id, said]) =>
        line(detailName(words, 'preview', id), detailAnswer(words, 'preview', id, said)),
      ),
    ),
    ...listed(
      'job:told',
      [...told.now, ...told.lines, ...told.never].map((sentence) => `- ${sentence}`),
    ),
    ...(unread.length === 0 ? [] : ['', t('job:unread', { list: unread.join('; ') })]),
  ].join('\n');
}
