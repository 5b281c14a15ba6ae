import { render } from 'solid-js/web';
import { newestRelease } from '../../note/library.ts';
import { library } from '../client/books.ts';
import { embedded } from '../client/embedded.ts';
import { keepFragment } from '../client/skip.ts';
import { pageWords } from '../client/words.ts';
import { Desk } from './Desk.tsx';
import { createCaller, type Keeper } from './caller.ts';
import { createClocks } from './clocks.ts';
import { createOutcome } from './outcome.ts';
import type { Carried } from './page.ts';
import { createShortcuts } from './shortcuts.ts';
import { createDesk } from './create-desk.ts';
import type { DeskState } from './state.ts';

/** Only a reload goes on with the same call; a copied or a new tab does not. */
function isReload(): boolean {
  const [entry] = performance.getEntriesByType('navigation');
  return (entry as PerformanceNavigationTiming | undefined)?.type === 'reload';
}

/** The tab's own storage, where the firm has switched it on and the browser has one. */
function keeperOf({ keepCaller }: Carried): Keeper {
  try {
    return keepCaller === 'tab' ? sessionStorage : undefined;
  } catch {
    return undefined;
  }
}

/** The page's danger list leads away to the caller's own pages; here it answers in the call. */
function keepDangerHere(desk: DeskState): void {
  document.querySelector('.danger-list')?.addEventListener('click', (event) => {
    const link = (event.target as Element).closest<HTMLAnchorElement>('[data-exit]');
    const list = link?.closest('details');
    if (!link || !list) return;
    event.preventDefault();
    list.open = false;
    desk.show('danger');
    desk.choose(link.dataset['exit'] ?? '');
  });
}

keepFragment();
const place = document.getElementById('desk');
const book = library.get(newestRelease(library) ?? 0);
if (place) {
  const words = pageWords();
  const carried = embedded('desk-data') as Carried;
  render(() => {
    const [guide] = book?.guides ?? [];
    if (!book || !guide) return <p class="told">{words.t('noBook')}</p>;
    const page = { ...carried, words, library, book };
    // Made here, not in the markup: a prop is an expression that is run at every reading.
    const desk = createDesk(page, guide, createCaller(keeperOf(carried), !isReload()));
    keepDangerHere(desk);
    const outcome = createOutcome(page, desk);
    const shortcuts = createShortcuts(desk, (form) => void outcome.copyJob(form));
    const clocks = createClocks(desk);
    return <Desk page={page} desk={desk} outcome={outcome} shortcuts={shortcuts} clocks={clocks} />;
  }, place);
}
