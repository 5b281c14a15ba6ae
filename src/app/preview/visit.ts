/** The state of a visit: its notes' answers and what the checks have shown, kept in this tab. */
import { createMemo, createSignal } from 'solid-js';
import { loadFor } from '../../diagnosis/parts.ts';
import { plan, jointSteps, stillOpen } from '../../diagnosis/plan.ts';
import { posterior, shares } from '../../diagnosis/posterior.ts';
import type { Evidence, Model } from '../../diagnosis/types.ts';
import { tryStorage } from '../shared/storage.ts';
import { createStability } from './stability.ts';
import { asEvidence, formatTaps, parseTaps, without, withTap, type Tap } from './taps.ts';

/** The problems of a visit together, as one range has them. */
export type VisitState = ReturnType<typeof createVisit>;
export type ProblemState = VisitState['problems'][number];

const read = (key: string): string => tryStorage(() => sessionStorage.getItem(key)) ?? '';

/** Where nothing is kept the results last as long as the page does. */
function store(key: string, text: string): void {
  tryStorage(() => {
    if (text === '') sessionStorage.removeItem(key);
    else sessionStorage.setItem(key, text);
  });
}

/** What a note brings to a visit. */
export interface Given {
  readonly model: Model;
  /** The guides that its journey came through, the last first. */
  readonly guides: readonly string[];
  readonly answers: Evidence;
}

/** @param code the note's code, under which the results are kept */
export function createVisit(given: readonly Given[], code: string) {
  const key = `hobnote.checks.${code}`;
  const models = given.map(({ model }) => model);
  const [taps, setTaps] = createSignal(parseTaps(read(key), models));
  const set = (next: readonly Tap[]) => {
    setTaps(next);
    store(key, formatTaps(next));
  };
  const problems = given.map(({ model, guides, answers }) => {
    /** The note's answers, then the checks' results. */
    const evidence = createMemo((): Evidence => [...answers, ...asEvidence(taps(), model)]);
    const now = createMemo(() => shares(model, evidence()));
    return {
      ...{ model, guides, evidence },
      ranking: createMemo(() => posterior(model, evidence())),
      plan: createMemo(() => plan(model, evidence(), now())),
      load: createMemo(() => loadFor(model, stillOpen(model, evidence(), now()))),
      /** How far the shares move; undefined while that is worked out. */
      stability: createStability(model, evidence),
    };
  });
  return {
    ...{ problems, taps },
    steps: createMemo(() => jointSteps(problems)),
    tap: (tap: Tap) => set(withTap(taps(), tap)),
    undo: (check: string) => set(without(taps(), check)),
  };
}
