import type { JSX } from 'solid-js';
import { defined } from '../../defined.ts';
import { latestDay } from '../../note/day.ts';
import { joined } from '../../visit/hand-over.ts';
import { makeJob, type Caller } from '../../visit/job.ts';
import type { Problems } from '../preview/told.ts';
import { CopyButton } from './CopyButton.tsx';
import { jobText, previewLink } from './job-text.ts';
import { sayer, type Words } from './words.ts';

interface Props {
  readonly page: { readonly words: Words };
  readonly problems: Problems;
  readonly caller: Caller;
  /** The display's text in full, where the code cannot hold it. */
  readonly error?: string | undefined;
}

/** A visit handed over as the desk would: its job as text and as data. */
export function CopyJob(props: Props): JSX.Element {
  const t = sayer(props);
  const others = () => props.problems.slice(1).map(({ seen }) => seen);
  const job = () => {
    const { problems, caller, error } = props;
    const [{ code, seen }, ...more] = problems;
    const also = more.map((one) => one.code);
    return makeJob(seen, {
      ...{ code, caller, also, link: previewLink(joined([code, ...also])) },
      others: others(),
      made: latestDay(seen.note.day, new Date()),
      ...defined({ error }),
    });
  };
  const text = (): string => {
    const made = job();
    const [{ code, seen }] = props.problems;
    return made ? jobText(props.page.words, seen, made, others()) : code;
  };
  return (
    <>
      <CopyButton page={props.page} label={t('job:copy')} text={text} done={t('job:copied')} />
      <CopyButton
        page={props.page}
        label={t('job:copyJson')}
        text={() => JSON.stringify(job() ?? { code: props.problems[0].code }, undefined, 2)}
        done={t('job:copied')}
      />
    </>
  );
}
