import { createSignal, type JSX } from 'solid-js';
import { defined } from '../../defined.ts';
import { latestDay } from '../../note/day.ts';
import type { NoteCode } from '../../note/types.ts';
import { makeJob, type Caller } from '../../visit/job.ts';
import type { VisitView } from '../../visit/read-visit.ts';
import { copy } from './copy.ts';
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

/** A visit handed over as the desk would: its job's text on the clipboard. */
export function CopyJob(props: Props): JSX.Element {
  const t = sayer(props);
  const [copied, setCopied] = createSignal<string>();
  const text = (): string => {
    const { view, code, caller, error } = props;
    const job = makeJob(view, {
      ...{ code, caller, link: previewLink(code) },
      made: latestDay(view.note.day, new Date()),
      ...defined({ error }),
    });
    return job ? jobText(props.page.words, view, job) : code;
  };
  const said = () => {
    const last = copied();
    if (last === undefined) return '';
    return t(last === text() ? 'job:copied' : 'job:stale');
  };
  return (
    <>
      <button
        type="button"
        class="plain"
        onClick={() => {
          const now = text();
          void copy(now).then((worked) => worked && setCopied(now));
        }}
      >
        {t('job:copy')}
      </button>
      <span role="status">{said()}</span>
    </>
  );
}
