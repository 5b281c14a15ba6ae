/** The state of a visit: the note's answers and what the checks have shown, kept in this tab. */
import { createMemo, createSignal, type Accessor } from 'solid-js';
import { loadFor, weigh, type Load, type Weighed } from '../../diagnosis/parts.ts';
import { plan, stillOpen, type Plan } from '../../diagnosis/plan.ts';
import { posterior, shares, type Share } from '../../diagnosis/posterior.ts';
import type { Stability } from '../../diagnosis/stability.ts';
import type { Evidence, Model } from '../../diagnosis/types.ts';
import { tryStorage } from '../shared/storage.ts';
import { createStability } from './stability.ts';
import { asEvidence, formatTaps, parseTaps, without, withTap, type Tap } from './taps.ts';

export interface DiagnosisState {
  readonly model: Model;
  readonly taps: Accessor<readonly Tap[]>;
  /** The note's answers, then the checks' results. */
  readonly evidence: Accessor<Evidence>;
  readonly ranking: Accessor<readonly Share[]>;
  /** The shares alone, in the model's order of faults. */
  readonly shares: Accessor<readonly number[]>;
  readonly plan: Accessor<Plan>;
  readonly load: Accessor<Load>;
  /** What it costs and saves to have each part along. */
  readonly weighed: Accessor<readonly Weighed[]>;
  /** How far the shares move; undefined while that is worked out. */
  readonly stability: Accessor<Stability | undefined>;
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

/**
 * @param answers what the note says
 * @param code the note's code, under which the results are kept
 */
export function createVisit(model: Model, answers: Evidence, code: string): DiagnosisState {
  const key = `hobnote.checks.${code}`;
  const [taps, setTaps] = createSignal(parseTaps(read(key), model));
  const evidence = createMemo(() => [...answers, ...asEvidence(taps())]);
  const open = createMemo(() => stillOpen(model, evidence()));
  const load = createMemo(() => loadFor(model, open()));
  const set = (next: readonly Tap[]) => {
    setTaps(next);
    store(key, formatTaps(next));
  };
  return {
    model,
    taps,
    evidence,
    ranking: createMemo(() => posterior(model, evidence())),
    shares: createMemo(() => shares(model, evidence())),
    plan: createMemo(() => plan(model, evidence())),
    load,
    weighed: createMemo(() => weigh(model, open(), load())),
    stability: createStability(model, evidence),
    tap: (tap) => set(withTap(taps(), tap)),
    undo: (check) => set(without(taps(), check)),
  };
}
