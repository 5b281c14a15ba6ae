/** Guides as small as can be, sound but for what a test changes in them, and what the proof tells. */
import { expect } from 'vitest';
import type { Answer, Guide, GuideNode, Rule } from '../../../src/guide/types.ts';
import { prove } from '../../../src/proof/prove.ts';
import type { Fault, PropertyId } from '../../../src/proof/property.ts';
import type { GuideText } from '../../../src/proof/sentences.ts';

export type Way = string | (Omit<Partial<Answer>, 'id' | 'to'> & { readonly to: string });
export type Ways = Readonly<Record<string, Way>>;
export type Draft = Readonly<Partial<Record<Exclude<keyof GuideNode, 'answers'>, unknown>>> & {
  readonly answers?: Ways;
};
export type Pages = Readonly<Record<string, Draft | undefined>>;
export interface More {
  readonly exits?: Ways;
  readonly rules?: readonly Rule[];
}

export const stop = (danger: string, more: Draft = {}): Draft => ({
  ...{ kind: 'stop', urgency: 'emergency', call: ['emergency'], danger },
  ...more,
});
export const soon: Draft = { kind: 'stop', urgency: 'soon', call: ['technician'] };
export const step = (action: string, answers: Ways = {}, more: Draft = {}): Draft => ({
  ...{ kind: 'step', action, answers: { unsure: 'done', ...answers } },
  ...more,
});
export const asks = (answers: Ways = {}): Draft => ({ answers: { unsure: 'done', ...answers } });
export const first = (answers: Ways): Draft => ({
  answers: { fire: 'stop-fire', unsure: 'stop-unsure', ...answers },
});

/** A guide in which every property holds. */
export const sound: Pages = {
  danger: first({ none: 'look' }),
  look: asks({ well: 'done' }),
  'stop-fire': stop('fire'),
  'stop-unsure': stop('unsure'),
  done: { kind: 'finish' },
};
export const gone = undefined;

const answersOf = (ways: Ways): Answer[] =>
  Object.entries(ways).map(([id, way]) => {
    const more = typeof way === 'string' ? { to: way } : way;
    return { sets: [], clears: [], ...more, id } as unknown as Answer;
  });

/** The sound guide with some pages in place of its own. */
export function guideOf(pages: Pages, { exits, rules }: More = {}): Guide {
  const drafts = Object.entries({ ...sound, ...pages }).flatMap(([id, draft]) =>
    draft ? [[id, draft] as const] : [],
  );
  const nodes = drafts.map(([id, { answers = {}, ...draft }]) => {
    const kind = 'question';
    const none = { kind, urgency: 'none', call: [], heat: false, breakerStaysOff: false };
    const named = { id, page: id, sentences: id, guide: 'small', takesError: false };
    return { ...named, ...none, ...draft, answers: answersOf(answers) } as unknown as GuideNode;
  });
  const dangers = nodes.find(({ id }) => String(id) === 'danger')?.answers ?? [];
  const named = { id: 'small', start: 'danger' } as unknown as Pick<Guide, 'id' | 'start'>;
  return {
    ...{ ...named, flags: [], tracks: ['only'] },
    nodes: new Map(nodes.map((node) => [node.id, node])),
    exits: exits
      ? answersOf(exits)
      : dangers.filter(({ id }) => !['none', 'unsure'].includes(String(id))),
    ...(rules ? { rules } : {}),
  };
}

const told = (fault: Fault): string => Object.values(fault).flat().join(' ');

export type Broken = Readonly<Partial<Record<PropertyId, readonly string[]>>>;

/** What fails: the journey that shows it, the fault it shows, and all other faults. */
export function broken(guide: Guide, text?: GuideText): Broken {
  const { holds, verdicts } = prove(guide, text);
  const failing = verdicts.flatMap(({ id, holds: kept, faults, counterExample }) => {
    expect([kept, kept]).toEqual([counterExample === undefined, faults.length === 0]);
    if (!counterExample) return [];
    const { fault, journey } = counterExample;
    const shown = journey.map(({ at, answer }) => `${at}.${answer}`).join(' ');
    const others = faults.filter((one) => one !== fault).map(told);
    return [[id, [shown, told(fault), ...others]] as const];
  });
  expect(holds).toBe(failing.length === 0);
  return Object.fromEntries(failing);
}
