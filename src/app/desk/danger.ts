import { onCleanup } from 'solid-js';

/** The page's danger list leads away to the caller's own pages; here it answers in the call. */
export function onDanger(answer: (exit: string) => void): void {
  const all = document.querySelector('.danger-list');
  const clicked = (event: Event): void => {
    const link = (event.target as Element).closest<HTMLAnchorElement>('[data-exit]');
    const list = link?.closest('details');
    if (!link || !list) return;
    event.preventDefault();
    list.open = false;
    answer(link.dataset['exit'] ?? '');
  };
  all?.addEventListener('click', clicked);
  onCleanup(() => all?.removeEventListener('click', clicked));
}
