import {
  Show,
  createEffect,
  createMemo,
  createSignal,
  on,
  onCleanup,
  onMount,
  type JSX,
} from 'solid-js';
import { partsToBring } from '../../route/parts-to-bring.ts';
import { sayer } from '../shared/words.ts';
import { AddByHand } from './AddByHand.tsx';
import { Enter } from './Enter.tsx';
import { PartsToBring } from './PartsToBring.tsx';
import { Mend } from './Mend.tsx';
import { Out } from './Out.tsx';
import { Sheets } from './Sheets.tsx';
import { Total } from './Total.tsx';
import { Visits } from './Visits.tsx';
import { createFigures } from './figures.ts';
import type { Page } from './page.ts';
import { createRoute } from './state.ts';

/** The technician's next day: codes in, visits in order, what to load, files out. */
export function RoutePage(props: { readonly page: Page }): JSX.Element {
  const t = sayer(props);
  // eslint-disable-next-line solid/reactivity -- the page is made once
  const route = createRoute(props.page);
  const figures = createFigures(route.visits);
  const [said, setSaid] = createSignal('');
  const say = (text: string): void => {
    // The same words again are told again.
    setSaid('');
    queueMicrotask(() => setSaid(text));
  };
  /** The browser asks before a route that is in no file is lost. */
  const ask = (event: BeforeUnloadEvent): void => {
    if (route.unsaved()) event.preventDefault();
  };
  onMount(() => addEventListener('beforeunload', ask));
  onCleanup(() => removeEventListener('beforeunload', ask));
  const parts = { route, say };
  const load = createMemo(() => partsToBring(figures()));
  const any = () => route.visits().length + route.unread().length > 0;
  const [open, setOpen] = createSignal(true);
  // Emptied, it is there to be filled.
  createEffect(on(any, (some) => !some && setOpen(true), { defer: true }));
  const [sheets, setSheets] = createSignal(false);
  const printSheets = (): void => {
    setSheets(true);
    addEventListener('afterprint', () => setSheets(false), { once: true });
    print();
  };
  return (
    <>
      <details class="add" open={open()} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{t('round:enter.title')}</summary>
        <Enter {...props} {...parts} onAdded={() => setOpen(false)} />
        <AddByHand {...props} {...parts} />
      </details>
      <p class="said" role="status">
        {said()}
      </p>
      <Show when={route.busy()}>
        {(busy) => (
          <p class="busy">
            <label>
              {t(`round:busy.${busy().what}`)}{' '}
              <progress max={Math.max(1, busy().of)} value={busy().done} />
            </label>
          </p>
        )}
      </Show>
      <Show when={route.lost()}>
        <p class="lost strong">{t('round:keptCodes')}</p>
      </Show>
      <Visits {...props} {...parts} load={load()} />
      <Mend {...props} {...parts} />
      <Show when={route.visits().length > 0}>
        <Total {...props} {...parts} figures={figures()} />
        <PartsToBring {...props} {...parts} load={load()} />
      </Show>
      <Show when={any()}>
        <Out {...props} {...parts} load={load()} onSheets={printSheets} />
      </Show>
      <Show when={sheets()}>
        <Sheets {...props} {...parts} load={load()} />
      </Show>
    </>
  );
}
