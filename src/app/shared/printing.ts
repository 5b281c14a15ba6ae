/** Whether the page is being printed. */
import { createSignal, onCleanup, onMount, type Accessor } from 'solid-js';

export function createPrinting(): Accessor<boolean> {
  const [printing, setPrinting] = createSignal(false);
  const tell = ({ type }: Event) => setPrinting(type === 'beforeprint');
  const events = ['beforeprint', 'afterprint'];
  onMount(() => events.forEach((event) => addEventListener(event, tell)));
  onCleanup(() => events.forEach((event) => removeEventListener(event, tell)));
  return printing;
}
