import { Show, createMemo, createSignal, type JSX } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { partsToBring } from '../../route/parts-to-bring.ts';
import { sayer } from '../shared/words.ts';
import { Mend } from './Mend.tsx';
import { Out } from './Out.tsx';
import { PartsToBring } from './PartsToBring.tsx';
import type { Sheets as SheetsPart } from './Sheets.tsx';
import { Total } from './Total.tsx';
import { Visits } from './Visits.tsx';
import { createFigures } from './figures.ts';
import type { RouteProps } from './props.ts';

/** All that there is once a visit is; loaded with the first. */
export function Day(props: RouteProps): JSX.Element {
  const t = sayer(props);
  const figures = createFigures(() => props.route.visits());
  const load = createMemo(() => partsToBring(figures()));
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
      <Visits {...props} load={load()} />
      <Mend {...props} />
      <Show when={props.route.visits().length > 0}>
        <Total {...props} figures={figures()} />
        <PartsToBring {...props} load={load()} />
      </Show>
      <Out {...props} load={load()} onSheets={() => void printSheets()} />
      <Show when={sheets()}>{(part) => <Dynamic component={part()} {...props} />}</Show>
    </>
  );
}
