import { For, type JSX } from 'solid-js';
import { Sheet } from '../preview/Sheet.tsx';
import { workOf } from '../preview/work.ts';
import { byUrgency } from '../../visit/read-visit.ts';
import { sayer } from '../shared/words.ts';
import { wordsOf } from './facts.ts';
import type { RouteProps } from './props.ts';
import type { Listed } from './state.ts';

/** A page a visit, whatever its problems, on paper only. */
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
  const visits = () => {
    const all = new Map<string, [Listed, ...Listed[]]>();
    for (const visit of props.route.visits()) {
      const key = props.route.visitKey(visit);
      all.set(key, [...(all.get(key) ?? []), visit] as [Listed, ...Listed[]]);
    }
    return [...all.values()];
  };
  return (
    <div class="sheets">
      <For each={visits()}>
        {([visit, ...more]) => {
          const problems = byUrgency(
            [visit, ...more].flatMap(({ code, seen }) => (code && seen ? [{ code, seen }] : [])),
          );
          const known = problems.flatMap(({ seen: { model, evidence } }) =>
            model ? [{ model, evidence }] : [],
          );
          const held = problems.some(({ seen }) => seen.urgency === 'emergency');
          return (
            <Sheet
              page={{ words: wordsOf(props.page, visit) }}
              title={t('round:sheet.title', { place: props.route.visits().indexOf(visit) + 1 })}
              problems={problems}
              caller={props.route.callerOf(visit)}
              others={others(visit)}
              work={held || known.length === 0 ? undefined : workOf(known)}
            />
          );
        }}
      </For>
    </div>
  );
}
