import { For, Show, type JSX } from 'solid-js';
import { shares } from '../../diagnosis/posterior.ts';
import type { Check, CheckResult } from '../../diagnosis/types.ts';
import { name, resultName } from '../shared/staff-words.ts';
import { percent } from './facts.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';
import { asEvidence } from './taps.ts';
import type { DiagnosisState } from './visit.ts';

interface Props {
  readonly page: Page;
  readonly visit: DiagnosisState;
  readonly check: Check;
  onResult(result: string): void;
}

/** What the check can show, what each result does to the faults it is about, and the tap. */
export function Results(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const about = () => [...new Set(props.check.results.flatMap(({ pointsTo }) => pointsTo))];
  const then = ({ id }: CheckResult) =>
    shares(props.visit.model, [
      ...props.visit.evidence(),
      ...asEvidence([{ check: props.check.id, result: id }]),
    ]);
  const place = (fault: string) => props.visit.model.faults.findIndex(({ id }) => id === fault);
  const moves = (result: CheckResult) => {
    const [before, after] = [props.visit.shares(), then(result)];
    return about().map((fault) => ({
      fault,
      in: result.pointsTo.includes(fault),
      before: percent(words(), before[place(fault)] ?? 0),
      after: percent(words(), after[place(fault)] ?? 0),
    }));
  };
  return (
    <>
      <h4>{t('preview:plan.results')}</h4>
      <ul class="results">
        <For each={props.check.results}>
          {(result) => (
            <li>
              <button type="button" class="plain" onClick={() => props.onResult(result.id)}>
                {resultName(words(), props.check.id, result.id)}
              </button>
              <Show when={result.pointsTo.length === 0}>
                <span class="quiet">{t('preview:plan.clear')}</span>
              </Show>
              <ul class="quiet">
                <For each={moves(result)}>
                  {(move) => (
                    <li>
                      {t(move.in ? 'preview:plan.rulesIn' : 'preview:plan.rulesOut', {
                        fault: name(words(), 'faults', move.fault),
                        before: move.before,
                        after: move.after,
                      })}
                    </li>
                  )}
                </For>
              </ul>
            </li>
          )}
        </For>
      </ul>
    </>
  );
}
