/** The state of a visit: its notes' answers and what the checks have shown, kept in this tab. */
import { createMemo, createSignal, type Accessor } from 'solid-js';
import { loadFor, type Load } from '../../diagnosis/parts.ts';
import { plan, jointSteps, stillOpen, type Plan } from '../../diagnosis/plan.ts';
import { posterior, shares, type Share } from '../../diagnosis/posterior.ts';
import type { Stability } from '../../diagnosis/stability.ts';
import type { Evidence, Model } from '../../diagnosis/types.ts';
import { tryStorage } from '../shared/storage.ts';
import { createStability } from './stability.ts';
import { asEvidence, formatTaps, parseTaps, without, withTap, type Tap } from './taps.ts';
import type { Work } from './work.ts';

/** One problem of a visit. */
export interface ProblemState {
  readonly model: Model;
  /** The guides that its journey came through, the last first. */
  readonly guides: readonly string[];
  /** The note's answers, then the checks' results. */
  readonly evidence: Accessor<Evidence>;
  readonly ranking: Accessor<readonly Share[]>;
  readonly plan: Accessor<Plan>;
  readonly load: Accessor<Load>;
  /** How far the shares move; undefined while that is worked out. */
  readonly stability: Accessor<Stability | undefined>;
}

/** All of them together, as one range has them. */
export interface VisitState extends Work {
  readonly problems: readonly ProblemState[];
  readonly taps: Accessor<readonly Tap[]>;
  tap(tap: Tap): void;
  undo(check: string): void;
}

const read = (key: string): string => tryStorage(() => sessionStorage.getItem(key)) ?? '';

/** Where nothing is kept the results last as long as the page does. */
function store(key: string, text: string): void {
  tryStorage(() => {
    if (text === '') sessionStorage.removeItem(key);
    else sessionStorage.setItem(key, text);
  });
}

/** What a note brings to a visit. */
export interface Given extends Pick<ProblemState, 'model' | 'guides'> {
  readonly answers: Evidence;
}

/** @param code the note's code, under which the results are kept */
export function createVisit(given: readonly Given[], code: string): VisitState {
  const key = `hobnote.checks.${code}`;
  const models = given.map(({ model }) => model);
  const [taps, setTaps] = createSignal(parseTaps(read(key), models));
  const set = (next: readonly Tap[]) => {
    setTaps(next);
    store(key, formatTaps(next));
  };
  const problems = given.map(({ model, guides, answers }): ProblemState => {
    const evidence = createMemo(() => [...answers, ...asEvidence(taps(), model)]);
    const now = createMemo(() => shares(model, evidence()));
    return {
      ...{ model, guides, evidence },
      ranking: createMemo(() => posterior(model, evidence())),
      plan: createMemo(() => plan(model, evidence(), now())),
      load: createMemo(() => loadFor(model, stillOpen(model, evidence(), now()))),
      stability: createStability(model, evidence),
    };
  });
  return {
    ...{ problems, taps },
    steps: createMemo(() => jointSteps(problems)),
    tap: (tap) => set(withTap(taps(), tap)),
    undo: (check) => set(without(taps(), check)),
  };
}
