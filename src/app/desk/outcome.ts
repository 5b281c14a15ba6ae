/** What comes of a call: its code, the job, and the way onto the clipboard. */
import { createMemo } from 'solid-js';
import { dayOf } from '../../note/day.ts';
import { tidyErrorText } from '../../note/error-text.ts';
import { makeJob, type Job } from '../../visit/job.ts';
import type { Note } from '../../note/types.ts';
import { readVisit } from '../../visit/read-visit.ts';
import { copy } from '../shared/copy.ts';
import { codeOf, knownDetails, localDay } from '../note/code.ts';
import { jobText } from './job-text.ts';
import { deskNodeOf, cautionsOf } from './nodes.ts';
import type { Page } from './page.ts';
import type { DeskState } from './state.ts';

export type Form = 'text' | 'json';

export type Outcome = ReturnType<typeof createOutcome>;

export function createOutcome(page: Page, desk: DeskState) {
  const code = createMemo(() => {
    if (desk.journey.length() === 0) return undefined;
    return codeOf(page.codebooks, page.codebook, desk.guide.id, desk.address.fragment())?.code;
  });
  const made = () => desk.address.fragment().made ?? localDay(new Date());
  /** Nodes with cautions that the journey came past, an end reached among them. */
  const careful = () => {
    const { steps, end, state } = desk.journey.traced();
    const nodes = steps.map(({ node }) => node);
    const passed = state === 'open' ? nodes : [...nodes, end];
    return passed.filter((node) => cautionsOf(page.words, desk.guide, node).length > 0);
  };
  const view = createMemo(() => {
    const note: Note = {
      release: page.codebook.release,
      guide: desk.guide.id,
      journey: desk.journey.edited().journey,
      day: dayOf(new Date(`${made()}T00:00:00Z`)),
      details: knownDetails(page.codebook, desk.address.fragment().details),
      error: tidyErrorText(desk.address.fragment().error ?? ''),
    };
    return readVisit(note, page.codebooks);
  });
  const job = createMemo((): Job | undefined => {
    const written = code();
    if (!written) return undefined;
    const named = (read: boolean) =>
      careful()
        .filter((node) => desk.journey.isRead(node) === read)
        .map(({ id }) => id);
    return makeJob(view(), {
      code: written,
      codeReadBack: desk.readBack() === written,
      made: made(),
      breakerStaysOff: deskNodeOf(page, desk.journey.traced().end).breakerStaysOff === true,
      cautions: { read: named(true), unread: named(false) },
      caller: desk.caller.caller(),
    });
  });
  const text = createMemo(() => {
    const found = job();
    return found ? jobText(page.words, view(), found) : '';
  });
  return {
    code,
    job,
    /** The job in words; '' without one. */
    text,
    /** Whether the text was copied, and has not changed since. */
    copy: (): 'never' | 'stale' | 'same' => {
      const before = desk.copied();
      if (before === undefined) return 'never';
      return before === text() ? 'same' : 'stale';
    },
    async copyJob(form: Form): Promise<void> {
      const found = job();
      if (!found) {
        desk.say({ key: 'desk:status.noJob' });
        return;
      }
      const json = form === 'json';
      const worked = await copy(json ? JSON.stringify(found, undefined, 2) : text());
      if (worked) desk.setCopied(text());
      const done = json ? 'desk:status.copiedJson' : 'desk:status.copied';
      desk.say({ key: worked ? done : 'desk:status.byHand' });
      if (worked) return;
      const field = document.querySelector<HTMLTextAreaElement>(json ? '#desk-json' : '#desk-job');
      field?.focus();
      field?.select();
    },
  };
}
