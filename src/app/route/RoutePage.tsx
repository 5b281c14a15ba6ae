import { Show, createEffect, createSignal, on, onCleanup, onMount, type JSX } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { Fetching } from '../shared/Fetching.tsx';
import { createLatePart } from '../shared/late-part.ts';
import { sayer } from '../shared/words.ts';
import { AddByHand } from './AddByHand.tsx';
import { Enter } from './Enter.tsx';
import type { Page } from './page.ts';
import { createRoute } from './state.ts';

/** The technician's next day: codes in, visits in order, what to load, files out. */
export function RoutePage(props: { readonly page: Page }): JSX.Element {
  const t = sayer(props);
  // eslint-disable-next-line solid/reactivity -- the page is made once
  const route = createRoute(props.page);
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
  const any = () => route.visits().length + route.unread().length > 0;
  const [open, setOpen] = createSignal(true);
  // Emptied, it is there to be filled.
  createEffect(on(any, (some) => !some && setOpen(true), { defer: true }));
  const day = createLatePart(any, async () => (await import('./Day.tsx')).Day);
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
      <Show when={any()}>
        <Show when={day.value()} fallback={<Fetching words={props.page.words} fetched={day} />}>
          {(part) => <Dynamic component={part()} {...props} {...parts} />}
        </Show>
      </Show>
    </>
  );
}
