import { For, type JSX } from 'solid-js';
import type { Compared as Place } from '../../note/read-back.ts';

/**
 * Two codes, letter over letter, for the eye alone: words beside it say the same. What differs has a
 * box, and an arrow that points at it.
 */
export function Compared(props: {
  readonly places: readonly Pick<Place, 'at' | 'is' | 'was'>[];
  /** Which of them stands above. */
  readonly above: 'is' | 'was';
  /** Signs in a group. */
  readonly group: number;
}): JSX.Element {
  const groups = () => {
    const found: Pick<Place, 'at' | 'is' | 'was'>[][] = [];
    for (const place of props.places)
      (found[Math.floor(place.at / props.group)] ??= []).push(place);
    return found;
  };
  const below = () => (props.above === 'is' ? 'was' : 'is');
  return (
    <div class="compared" aria-hidden="true">
      <For each={groups()}>
        {(places) => (
          <span>
            <For each={places}>
              {(place) => (
                <span classList={{ changed: place.is !== place.was }}>
                  <span>{place[props.above] || '·'}</span>
                  <span>{place[below()] || '·'}</span>
                </span>
              )}
            </For>
          </span>
        )}
      </For>
    </div>
  );
}
