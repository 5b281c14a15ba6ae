import { createSignal, type Accessor } from 'solid-js';
import type { Words } from '../shared/words.ts';
import { chosenPercent } from './facts.ts';

const LEAST = 50;
const MOST = 99;
const USUAL = 90;

/** The chance that is to be enough, in percent, and the slider that sets it; one a page. */
export function createChance(
  words: () => Words,
): readonly [chance: Accessor<number>, slider: () => Element] {
  const [chance, setChance] = createSignal(USUAL);
  const slider = () =>
    (
      <div class="slider">
        <input
          id="chance"
          type="range"
          min={LEAST}
          max={MOST}
          value={chance()}
          aria-valuetext={chosenPercent(words(), chance() / 100)}
          onInput={(event) => setChance(event.currentTarget.valueAsNumber)}
        />
        <span>{chosenPercent(words(), chance() / 100)}</span>
      </div>
    ) as Element;
  return [chance, slider];
}
