/** A visit's facts in words. */
import type { PartsToBring } from '../../route/parts-to-bring.ts';
import type { PlannedVisit } from '../../route/types.ts';
import { percent } from '../preview/facts.ts';
import { answerWords, nodeWords } from '../shared/content-words.ts';
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

/** What is said of one visit. */
export interface VisitFacts {
  readonly urgency: string;
  readonly reason: string;
  readonly flags: readonly string[];
  readonly faults: readonly string[];
  /** Those to take along for this visit alone. */
  readonly parts: readonly string[];
}

export function told(page: Page, { seen, assessed }: PlannedVisit, load: PartsToBring): VisitFacts {
  const known = page.guides.known(seen.guide.id);
  const of = known?.words ?? page.words;
  const { because, danger, guide, end } = seen;
  const said = ({ node, edge }: NonNullable<typeof because>) =>
    answerWords(of, guide, node, edge.id);
  return {
    urgency: of.t(`preview:outcome.urgency.${seen.urgency}`),
    reason:
      seen.urgency === 'open' || !because
        ? page.words.t('round:visits.left', { title: nodeWords(of, guide, end).short })
        : page.words.t('round:visits.because', {
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
