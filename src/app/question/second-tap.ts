/**
 * What a slip must not set off acts at the second tap: the first one on an element with
 * `data-confirm` only shows and tells what that attribute says; it is `defaultPrevented`, and whoever
 * acts on clicks must look at that. A tap elsewhere, and the focus going elsewhere, takes it back.
 * Without scripts one tap is enough.
 */
let armed: HTMLElement | undefined;

function arm(next?: HTMLElement): void {
  armed?.removeAttribute('data-armed');
  armed = next;
  next?.setAttribute('data-armed', '');
  const tell = document.querySelector('[data-tell]');
  if (tell) tell.textContent = next ? `${next.dataset['confirm'] ?? ''}: ${next.innerText}` : '';
}

const asking = ({ target }: Event) => (target as Element).closest<HTMLElement>('[data-confirm]');

// Before all other listeners, which must know.
addEventListener(
  'click',
  (event) => {
    const tapped = asking(event);
    // A double tap of a shaking hand is one tap.
    if (tapped && (tapped !== armed || event.detail > 1)) {
      event.preventDefault();
      if (tapped !== armed) arm(tapped);
    } else arm();
  },
  true,
);
// So is a key held down. A number taps its answer, where it is no text and not the browser's own (Ctrl 1).
addEventListener('keydown', (event) => {
  const { key, repeat, ctrlKey, metaKey, altKey, target } = event;
  if (repeat) {
    if (key === 'Enter' && asking(event)) event.preventDefault();
  } else if (!ctrlKey && !metaKey && !altKey && !(target as HTMLInputElement).type) {
    const answers = document.querySelectorAll<HTMLElement>('body:not(.astray) .page [data-answer]');
    answers[Number(key) - 1]?.click();
  }
});
addEventListener('focusout', (event) => {
  if (armed && asking(event) === armed) arm();
});
addEventListener('pagehide', () => {
  arm();
});
