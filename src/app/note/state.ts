/**
 * The note's state is the address's fragment: it survives reload, and is never sent. What was
 * written in own words lies in the tab, out of the browser's history.
 */
import { createSignal } from 'solid-js';
import { restoreFreeText, forAddress, stashFreeText } from '../shared/free-text.ts';
import { store } from '../shared/stored-journey.ts';
import { replaceHash } from '../shared/replace-hash.ts';
import { fragmentHash, parseFragment, type Fragment } from '../../address/fragment.ts';
import { qualify } from '../../guide/ids.ts';
import type { CodebookGuide } from '../../note/codebook.ts';

export type NoteState = ReturnType<typeof createNoteState>;

/** Also kept beside the address, for the first page to go on from. */
export function createNoteState() {
  const put = (fragment: Fragment): void => {
    replaceHash(hashOf(fragment));
  };
  const open = (): ReturnType<typeof parseFragment> => {
    const { fragment, problems } = parseFragment(location.hash);
    const now = stashFreeText(restoreFreeText(fragment));
    if (fragment.model ?? fragment.remark) put(now);
    return { fragment: now, problems };
  };
  const [read, setRead] = createSignal(open());
  addEventListener('hashchange', () => setRead(open()));
  return {
    fragment: () => read().fragment,
    /** What was wrong with the address as it came. */
    problems: () => read().problems,
    /** Change parts; '' takes a text out. The address follows. */
    change(parts: Partial<Fragment>): void {
      const fragment = stashFreeText({ ...read().fragment, ...parts });
      setRead({ ...read(), fragment });
      put(fragment);
      store(location.pathname + location.hash);
    },
  };
}

/** Address of a node's page from a page one folder deep: its own guide's, or the other it is of. */
export function pageOf(guide: CodebookGuide, node: string): string {
  return `../${qualify(guide.id, node)}/`;
}

/** A fragment as a link's `#…` within this tab, or '' where it holds nothing. */
export function hashOf(fragment: Fragment): string {
  return fragmentHash(forAddress(fragment));
}
