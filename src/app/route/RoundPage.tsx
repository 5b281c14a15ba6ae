import { Show, createSignal, onCleanup, onMount, type JSX } from 'solid-js';
import { sayer } from '../shared/words.ts';
import { createChance } from '../preview/Chance.tsx';
import { Enter } from './Enter.tsx';
import { Load } from './Load.tsx';
import { Mend } from './Mend.tsx';
import { Out } from './Out.tsx';
import { Total } from './Total.tsx';
import { Visits } from './Visits.tsx';
import { createFigures } from './figures.ts';
import type { Page } from './page.ts';
import { createRound } from './state.ts';

/** The technician's next day: codes in, visits in order, what to load, files out. */
export function RoundPage(props: { readonly page: Page }): JSX.Element {
  const t = sayer(props);
  // eslint-disable-next-line solid/reactivity -- the page is made once
  const round = createRound(props.page);
  const figures = createFigures(round.visits);
  const [said, setSaid] = createSignal('');
  const say = (text: string): void => {
    // The same words again are told again.
    setSaid('');
    queueMicrotask(() => setSaid(text));
  };
  /** The browser asks before a round that is in no file is lost. */
  const ask = (event: BeforeUnloadEvent): void => {
    if (round.unsaved()) event.preventDefault();
  };
  onMount(() => addEventListener('beforeunload', ask));
  onCleanup(() => removeEventListener('beforeunload', ask));
  const parts = { round, say };
  const [chance, Slider] = createChance(() => props.page.words);
  return (
    <>
      <Enter {...props} {...parts} />
      <p class="said" role="status">
        {said()}
      </p>
      <Show when={round.busy()}>
        {(busy) => (
          <p class="busy">
            <label>
              {t(`round:busy.${busy().what}`)}{' '}
              <progress max={Math.max(1, busy().of)} value={busy().done} />
            </label>
          </p>
        )}
      </Show>
      <Mend {...props} {...parts} />
      <Show when={round.visits().length > 0}>
        <Total {...props} {...parts} figures={figures()} />
        <Load {...props} {...parts} figures={figures()} chance={chance() / 100} slider={Slider} />
      </Show>
      <Show when={round.visits().length + round.unread().length > 0}>
        <Out {...props} {...parts} chance={chance() / 100} />
      </Show>
      <Visits {...props} {...parts} />
    </>
  );
}
