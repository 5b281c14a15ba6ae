/** What comes of a call: its code, the job, and the way onto the clipboard. */
import { createEffect, createMemo, createSignal } from 'solid-js';
import { minuteOf } from './clocks.ts';
import { dayOf } from '../../note/day.ts';
import { tidyErrorText } from '../../note/error-text.ts';
import { exactOf, joined } from '../../visit/hand-over.ts';
import { makeJob, type Job } from '../../visit/job.ts';
import type { Note } from '../../note/types.ts';
import { readVisit, type Figures } from '../../visit/read-visit.ts';
import { copy } from '../shared/Copy.tsx';
import { codeOf, knownDetails, localDay } from '../note/code.ts';
import type { PreviewPart } from '../preview/page.ts';
import { createAllFetched } from '../shared/fetched.ts';
import { jobText, previewLink } from '../shared/job-text.ts';
import { deskNodeOf, cautionsOf } from './nodes.ts';
import type { Page } from './page.ts';
import type { DeskState } from './state.ts';

export type Form = 'text' | 'json';

export type Outcome = ReturnType<typeof createOutcome>;

export function createOutcome(page: Page, desk: DeskState) {
  const code = createMemo(() => {
    if (desk.journey.length() === 0) return undefined;
    return codeOf(page.ownBooks, page.codebook, desk.guide.id, desk.address.fragment())?.code;
  });
  const made = () => desk.address.fragment().made ?? localDay(new Date());
  /** Nodes with cautions that the journey came past, an end reached among them. */
  const careful = () => {
    const { steps, end, state } = desk.journey.traced();
    const nodes = steps.map(({ node }) => node);
    const passed = state === 'open' ? nodes : [...nodes, end];
    return passed.filter((node) => cautionsOf(page.words, desk.guide, node).length > 0);
  };
  const [booked, setBooked] = createSignal(false);
  createEffect(() => {
    if (desk.also.length > 0)
      void page.addBooks().then(
        () => setBooked(true),
        () => undefined,
      );
  });
  const also = createMemo(() => (booked() ? exactOf(desk.also, page.codebooks) : []));
  /** Only for the likely parts, once the call has come to an end: a job without them is a job. */
  const fetched = createAllFetched<PreviewPart>(() => {
    const ended = desk.journey.traced().state === 'open' ? [] : [desk.guide.id];
    const guides = new Set([...ended, ...also().map(({ note }) => note.guide)]);
    return [...guides].flatMap((guide) => page.figures[guide] ?? []);
  });
  const figures = createMemo((): Figures => {
    const models = (fetched.value() ?? []).map((part) => part.models);
    return { models: Object.assign({}, ...models) as Figures['models'], staffViews: {} };
  });
  const view = createMemo(() => {
    const note: Note = {
      release: page.codebook.release,
      guide: desk.guide.id,
      journey: desk.journey.edited().journey,
      day: dayOf(new Date(`${made()}T00:00:00Z`)),
      details: knownDetails(page.codebook, desk.address.fragment().details),
      error: tidyErrorText(desk.address.fragment().error ?? ''),
    };
    return readVisit(note, page.ownBooks, figures());
  });
  /** What the codes of the caller's other problems say. */
  const others = createMemo(() =>
    also().map(({ note }) => readVisit(note, page.codebooks, figures())),
  );
  const job = createMemo((): Job | undefined => {
    const [written, answered] = [code(), desk.answered()];
    const { isRead, wasShownElsewhere } = desk.journey;
    const named = (read: boolean) =>
      careful()
        .filter((node) => isRead(node) === read && (read || !wasShownElsewhere(node)))
        .map(({ id }) => id);
    return makeJob(view(), {
      called: minuteOf(desk.began),
      ...(answered === undefined ? {} : { answered: minuteOf(answered) }),
      ...(written
        ? {
            code: written,
            codeReadBack: desk.readBack() === written,
            link: previewLink(joined([written, ...desk.also])),
          }
        : {}),
      made: made(),
      also: desk.also,
      others: others(),
      clerk: desk.caller.clerk(),
      breakerStaysOff: deskNodeOf(page, desk.journey.traced().end).breakerStaysOff === true,
      cautions: { read: named(true), unread: named(false) },
      caller: desk.caller.caller(),
    });
  });
  const text = createMemo(() => {
    const found = job();
    return found ? jobText(page.words, view(), found, others()) : '';
  });
  const json = createMemo(() => (job() ? JSON.stringify(job(), undefined, 2) : ''));
  const textOf = (form: Form) => (form === 'json' ? json() : text());
  return {
    code,
    job,
    json,
    /** Whether the job was copied, and the clipboard holds it as it is now. */
    copied: (): 'never' | 'stale' | 'same' => {
      const before = desk.copied();
      if (before === undefined) return 'never';
      return before === text() ? 'same' : 'stale';
    },
    /** The job in words; '' without one. */
    text,
    async copyJob(form: Form): Promise<void> {
      const found = job();
      if (!found) {
        desk.say({ key: 'desk:status.noJob' });
        return;
      }
      const field = form === 'json' ? '#desk-json' : '#desk-job';
      const worked = await copy(textOf(form), document.querySelector<HTMLTextAreaElement>(field));
      if (worked) desk.setCopied(text());
      const done = form === 'json' ? 'desk:status.copiedJson' : 'desk:status.copied';
      desk.say({ key: worked ? done : 'desk:status.byHand' });
    },
  };
}
