/** A visit's facts in words. */
import type { PartsToBring } from '../../route/parts-to-bring.ts';
import type { PlannedVisit } from '../../route/types.ts';
import type { Caller } from '../../visit/job.ts';
import { percent } from '../preview/facts.ts';
import { answerWords, guideName, nodeWords } from '../shared/content-words.ts';
import { flagWords, name } from '../shared/staff-words.ts';
import type { Words } from '../shared/words.ts';
import type { Page } from './page.ts';

/** Faults named for a visit. */
const FAULTS = 3;
/** A fault less likely than this is not worth a line. */
const LEAST = 0.05;
const HOUR = 60;

/** Minutes as people say them: hours and minutes from an hour on. */
export function duration(words: Words, minutes: number): string {
  const whole = Math.round(minutes);
  const [hours, rest] = [Math.floor(whole / HOUR), whole % HOUR];
  const parts = [
    ...(hours > 0 ? [words.t('round:total.hours', { count: hours })] : []),
    ...(rest > 0 || hours === 0 ? [words.t('preview:plan.minutes', { count: rest })] : []),
  ];
  return new Intl.ListFormat(words.language, { type: 'unit', style: 'narrow' }).format(parts);
}

/** What a visit is called: by whom it is for, else by its code. */
export function titleOf(page: Page, visit: PlannedVisit, caller: Caller): string {
  return (
    caller.name ??
    visit.code ??
    caller.address ??
    page.words.t('round:visits.row', { row: visit.row })
  );
}

/** The words of a visit's guide; the page's own where they are not there. */
export const wordsOf = (page: Page, { seen }: PlannedVisit): Words =>
  (seen && page.guides.known(seen.guide.id)?.words) ?? page.words;

/** What is said of one visit: `what` is the complaint, `parts` those to take along for it alone. */
export function told(page: Page, visit: PlannedVisit, load: PartsToBring) {
  const { seen, assessed } = visit;
  const { t } = page.words;
  const of = wordsOf(page, visit);
  const urgency = t(`job:urgency.${seen?.urgency ?? 'open'}`);
  if (!seen)
    return {
      urgency,
      what: t('round:visits.noCode'),
      reason: '',
      flags: [],
      faults: [],
      parts: [],
    };
  const { because, danger, guide, end } = seen;
  const said = ({ node, edge }: NonNullable<typeof because>) =>
    answerWords(of, guide, node, edge.id);
  return {
    urgency,
    what: guideName(of, guide.id),
    reason:
      seen.urgency === 'open' || !because
        ? t('round:visits.left', { title: nodeWords(of, guide, end).short })
        : t('round:visits.because', {
            asked: nodeWords(of, guide, because.node).short,
            answer: said(because),
          }),
    flags: [
      ...(danger ? [of.t('preview:flags.danger', { what: said(danger) })] : []),
      ...seen.flags.map((flag) => flagWords(of, flag)),
    ],
    faults: (assessed?.ranking ?? [])
      .filter(({ share }, index) => index < FAULTS && share >= LEAST)
      .map(({ fault, share }) => `${name(of, 'faults', fault)}, ${percent(of, share)}`),
    parts: (assessed?.parts ?? [])
      .filter(({ part }) => assessed && load.own.get(assessed)?.includes(part))
      .map(({ part, chance }) => `${name(of, 'parts', part)}, ${percent(of, chance)}`),
  };
}
