import { Show, type JSX } from 'solid-js';
import type { Fetched } from './fetched.ts';
import type { Words } from './words.ts';

/** What stands for a part that is not there yet, or could not be loaded: why, and the way on. */
export function Fetching<T>(props: {
  readonly words: Words;
  readonly fetched: Fetched<T>;
}): JSX.Element {
  const why = () => props.fetched.problem()?.code;
  return (
    <div class="fetching">
      <Show when={why()} fallback={<p class="quiet">{props.words.t('fetching:wait')}</p>}>
        {(code) => (
          <div class="card" role="alert">
            <p>{props.words.t(`fetching:${code()}`)}</p>
            <p>{props.words.t('fetching:kept')}</p>
            <p>
              <button type="button" onClick={() => props.fetched.retry()}>
                {props.words.t('fetching:retry')}
              </button>
            </p>
          </div>
        )}
      </Show>
    </div>
  );
}
