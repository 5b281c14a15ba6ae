import type { JSX } from 'solid-js';
import { defined } from '../../defined.ts';
import { latestDay } from '../../note/day.ts';
import type { NoteCode } from '../../note/types.ts';
import { makeJob, type Caller } from '../../visit/job.ts';
import type { VisitView } from '../../visit/read-visit.ts';
import { CopyButton } from './CopyButton.tsx';
import { jobText, previewLink } from './job-text.ts';
import { sayer, type Words } from './words.ts';

interface Props {
  readonly page: { readonly words: Words };
  readonly view: VisitView;
  readonly code: NoteCode;
  readonly caller: Caller;
  /** The display's text in full, where the code cannot hold it. */
  readonly error?: string | undefined;
}

/** A visit handed over as the desk would: its job as text and as data. */
export function CopyJob(props: Props): JSX.Element {
  const t = sayer(props);
  const job = () => {
    const { view, code, caller, error } = props;
    return makeJob(view, {
      ...{ code, caller, link: previewLink(code) },
      made: latestDay(view.note.day, new Date()),
      ...defined({ error }),
    });
  };
  const text = (): string => {
    const made = job();
    return made ? jobText(props.page.words, props.view, made) : props.code;
  };
  return (
    <>
      <CopyButton page={props.page} label={t('job:copy')} text={text} done={t('job:copied')} />
      <CopyButton
        page={props.page}
        label={t('job:copyJson')}
        text={() => JSON.stringify(job() ?? { code: props.code }, undefined, 2)}
        done={t('job:copied')}
      />
    </>
  );
}
