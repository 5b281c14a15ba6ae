import { Show, createEffect, createSignal, on, onCleanup, type JSX } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import {
  partsInPieces,
  partsToBring,
  type KnownVisits,
  type PartsToBring as PartsToBringOf,
} from '../../route/parts-to-bring.ts';
import { totalInPieces, type Total as TotalOf } from '../../route/total.ts';
import { painted } from '../shared/breathe.ts';
import { inPieces } from '../shared/slices.ts';
import { sayer } from '../shared/words.ts';
import { Mend } from './Mend.tsx';
import { Out } from './Out.tsx';
import { PartsToBring } from './PartsToBring.tsx';
import type { Sheets as SheetsPart } from './Sheets.tsx';
import { Total } from './Total.tsx';
import { Visits } from './Visits.tsx';
import { createFigures } from './figures.ts';
import type { RouteProps } from './props.ts';

const NO_LOAD: PartsToBringOf = { stock: [], own: new Map(), chance: 1 };

/** All that there is once a visit is; loaded with the first. */
export function Day(props: RouteProps): JSX.Element {
  const t = sayer(props);
  const figures = createFigures(() => props.route.visits());
  const known: KnownVisits = new WeakMap();
  const [made, setMade] = createSignal<{
    readonly of: ReturnType<typeof figures>;
    readonly load: PartsToBringOf;
    readonly total: TotalOf;
  }>();
  /** The load of the visits as they are, where it is wanted before it has been made in pieces. */
  const load = () => {
    const now = made();
    return now?.of === figures() ? now.load : partsToBring(figures(), known);
  };
  // What was tapped is painted first; then the day is worked out between other things.
  createEffect(
    on(figures, (list) => {
      const life = new AbortController();
      onCleanup(() => life.abort());
      function* day() {
        const bring = yield* partsInPieces(list, known);
        return { of: list, load: bring, total: yield* totalInPieces(list) };
      }
      const work = async (): Promise<void> => {
        await painted();
        const found = await inPieces(day(), () => life.signal.aborted);
        if (found) setMade(found);
      };
      void work();
    }),
  );
  const [sheets, setSheets] = createSignal<typeof SheetsPart>();
  const printSheets = async (): Promise<void> => {
    const part = await import('./Sheets.tsx').catch(() => undefined);
    if (!part) {
      props.say(t('round:problem.unloaded'));
      return;
    }
    setSheets(() => part.Sheets);
    addEventListener('afterprint', () => setSheets(), { once: true });
    print();
  };
  return (
    <>
      <Visits {...props} load={made()?.load ?? NO_LOAD} />
      <Mend {...props} />
      <Show when={props.route.visits().length > 0 && made()}>
        {(day) => (
          <div class="day">
            <Total {...props} total={day().total} figures={figures()} />
            <PartsToBring {...props} load={day().load} />
          </div>
        )}
      </Show>
      <Out {...props} load={load()} onSheets={() => void printSheets()} />
      <Show when={sheets()}>{(part) => <Dynamic component={part()} {...props} />}</Show>
    </>
  );
}
