/** How far the shares move when the figures are off, drawn in pieces so that the page answers between them. */
import { createEffect, createSignal, on, onCleanup, type Accessor } from 'solid-js';
import type { ShareRange, Stability } from '../../diagnosis/stability.ts';
import type { Evidence, Model } from '../../diagnosis/types.ts';
import { inPieces } from '../shared/slices.ts';
import type { ProblemState } from './visit.ts';

/** By how much each figure may be wrong, up or down. */
export const FACTOR = 2;
const DRAWS = 300;
/** Milliseconds after the last result: who taps on, or has only come to look, is not held up. */
const REST = 400;

export function createStability(
  model: Model,
  evidence: Accessor<Evidence>,
): Accessor<Stability | undefined> {
  const [stability, setStability] = createSignal<Stability>();
  createEffect(
    on(evidence, (given) => {
      const life = new AbortController();
      onCleanup(() => life.abort());
      setStability();
      const draw = async (): Promise<void> => {
        await new Promise((rested) => setTimeout(rested, REST));
        const found = await import('../../diagnosis/stability.ts').catch(() => undefined);
        const pieces = found?.stabilityInPieces(model, given, { factor: FACTOR, draws: DRAWS });
        const drawn = pieces && (await inPieces(pieces, () => life.signal.aborted));
        if (drawn) setStability(drawn);
      };
      void draw();
    }),
  );
  return stability;
}

export const rangeOf = (
  { stability }: Pick<ProblemState, 'stability'>,
  fault: string,
): ShareRange | undefined => stability()?.ranges.find((one) => one.fault === fault);
