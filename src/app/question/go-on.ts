/**
 * A page that stands in for one of a guide (`?guide/page/`, `offline/worker`): leads on to it with the
 * journey. Browsers take the fragment along; where one does not, the kept copy has it.
 */
import { STORED } from '../shared/stored-journey.ts';
import { tryStorage } from '../shared/storage.ts';
import { savedAddress } from './saved.ts';

const [, path] = /^\?([\w-]+\/[\w-]+\/)$/.exec(location.search) ?? [];
if (path !== undefined) {
  const page = new URL(`../${path}`, location.href);
  const kept = savedAddress(tryStorage(() => localStorage.getItem(STORED)) ?? '', location.href);
  page.hash = location.hash || (kept?.pathname === page.pathname ? kept.hash : '');
  for (const link of document.querySelectorAll<HTMLAnchorElement>('[data-go-on]')) {
    page.search = link.dataset['goOn'] ?? '';
    link.href = page.href;
  }
}
