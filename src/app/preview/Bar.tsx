import type { JSX } from 'solid-js';

interface Props {
  /** How much of the bar is filled, from 0 to 1. */
  readonly part: number;
  /** Where the filled piece begins. */
  readonly from?: number;
}

/** A figure as a bar; the words beside it say the same. */
export function Bar(props: Props): JSX.Element {
  return (
    <svg class="bar-of-share" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
      <rect class="all" width="100" height="6" />
      <rect x={100 * (props.from ?? 0)} width={100 * props.part} height="6" />
    </svg>
  );
}
