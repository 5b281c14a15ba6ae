import { For, type JSX } from 'solid-js';
import { Sheet } from '../preview/Sheet.tsx';
import { workOf } from '../preview/work.ts';
import { sayer } from '../shared/words.ts';
import { wordsOf } from './facts.ts';
import type { RouteProps } from './props.ts';
import type { Listed } from './state.ts';

/** A page a visit, on paper only. */
export function Sheets(props: RouteProps): JSX.Element {
  const t = sayer(props);
  /** Of the columns those that no line of the sheet is for. */
  const others = (visit: Listed): readonly string[] => {
    const known = new Set(props.route.known().values());
    return props.route.columns().flatMap((column, index) => {
      const cell = known.has(index) ? '' : (visit.others[index] ?? '').trim();
      return cell === '' ? [] : [`${column}: ${cell}`];
    });
  };
  return (
    <div class="sheets">
      <For each={props.route.visits()}>
        {(visit, place) => (
          <Sheet
            page={{ words: wordsOf(props.page, visit) }}
            title={t('round:sheet.title', { place: place() + 1 })}
            code={visit.code}
            view={visit.seen}
            caller={props.route.callerOf(visit)}
            others={others(visit)}
            work={
              visit.assessed && visit.seen?.model
                ? workOf(visit.seen.model, visit.seen.evidence)
                : undefined
            }
          />
        )}
      </For>
    </div>
  );
}
