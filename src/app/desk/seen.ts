import { createComputed, createSignal, on, onCleanup, type Accessor } from 'solid-js';

/**
 * Milliseconds a question must have stood on the screen before an answer to it counts: about what
 * people need to press a key on seeing a light (simple reaction time, from memory). A key that
 * falls earlier was meant for what stood there before.
 */
export const SEEN = 250;

/**
 * Whether what is asked now has been painted, and stood there for `SEEN`. A frame's callbacks run
 * before it is painted (HTML standard, update the rendering), so the second frame after the change
 * is the first that comes after its painting.
 * @param asked changes with what is asked
 */
export function createSeen(asked: Accessor<unknown>): Accessor<boolean> {
  const [seen, setSeen] = createSignal(false);
  let waiting: object | undefined;
  createComputed(
    on(asked, () => {
      const mine = {};
      waiting = mine;
      setSeen(false);
      const later = (next: () => void) => () => {
        if (waiting === mine) next();
      };
      const done = later(() => setSeen(true));
      requestAnimationFrame(
        later(() => requestAnimationFrame(later(() => setTimeout(done, SEEN)))),
      );
    }),
  );
  onCleanup(() => (waiting = undefined));
  return seen;
}
