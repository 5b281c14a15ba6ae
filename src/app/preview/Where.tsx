import { For, Show, type JSX } from 'solid-js';
import { KIND } from '../../diagnosis/evidence.ts';
import { name } from '../shared/staff-words.ts';
import type { DiagnosisProps } from './Faults.tsx';
import { likely } from './work.ts';
import { behind, inFront, spots } from './places.ts';

/** Kinds of range without a backguard. */
const WITHOUT = ['slide-in', 'wall', 'double', 'built-under'];

/** Where the likeliest faults sit, by the numbers they have in the chart. */
export function Where(props: DiagnosisProps): JSX.Element {
  const words = () => props.page.words;
  const front = () =>
    props.visit
      .evidence()
      .some(({ key, answer }) => key.endsWith(`.${KIND}`) && WITHOUT.includes(answer));
  const drawn = () => Object.entries({ ...spots, ...(front() ? inFront : behind) });
  const lit = () => {
    const found = new Map<string, number[]>();
    for (const [index, { fault }] of likely(props.visit).entries()) {
      const place = props.visit.model.faults.find(({ id }) => id === fault)?.place;
      if (place !== undefined) found.set(place, [...(found.get(place) ?? []), index + 1]);
    }
    return found;
  };
  return (
    <Show when={lit().size > 0}>
      <figure class="card where">
        <svg viewBox="24 4 270 168" aria-hidden="true">
          <path class="body" d="M56 42h208v122H56zM82 94h156v64H82zM44 164h236" />
          <Show when={!front()}>
            <path class="body" d="M250 42V34l5-26h19v34" />
          </Show>
          <For each={drawn()}>
            {([
              place,
              {
                path,
                at: [x, y],
              },
            ]) => (
              <g classList={{ lit: lit().has(place), first: lit().get(place)?.[0] === 1 }}>
                <path d={path} />
                <Show when={lit().get(place)}>
                  {(places) => (
                    <text x={x} y={y}>
                      {places().join(' ')}
                    </text>
                  )}
                </Show>
              </g>
            )}
          </For>
        </svg>
        <figcaption>
          <For each={[...lit()]}>
            {([place, places]) => (
              <p>
                <strong>{places.join(', ')}</strong> {name(words(), 'places', place)}
              </p>
            )}
          </For>
        </figcaption>
      </figure>
    </Show>
  );
}
