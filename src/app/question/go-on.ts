/**
 * A page that stands in for one of a guide (`?guide/page/`, `offline/worker`): leads on to it with the
 * journey. Browsers take the fragment along; where one does not, the kept copy has it.
 */
import { savedFor } from './saved.ts';

const [, path] = /^\?([\w-]+\/[\w-]+\/)$/.exec(location.search) ?? [];
if (path !== undefined) {
  const page = new URL(`../${path}`, location.href);
  page.hash = location.hash || (savedFor(page.pathname)?.hash ?? '');
  for (const link of document.querySelectorAll<HTMLAnchorElement>('[data-go-on]')) {
    page.search = link.dataset['goOn'] ?? '';
    link.href = page.href;
  }
}
