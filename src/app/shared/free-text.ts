/**
 * What people write in their own words (model number, remark) stays out of addresses, and so
 * out of the browser's history: it lies in the tab's session storage, and the address only
 * holds the key to it (`k`), so that journeys in one tab never mix. Where the browser refuses
 * storage the text stays in the address, where nothing that was written gets lost.
 */
import { defined } from '../../defined.ts';
import { formatFragment, parseFragment, type Fragment } from '../../address/fragment.ts';
import { tryStorage } from './storage.ts';

type FreeText = Pick<Fragment, 'model' | 'remark'>;

const nameOf = (stored: string): string => `hobnote.text.${stored}`;

function newKey(): string {
  return [...crypto.getRandomValues(new Uint8Array(8))]
    .map((byte) => (byte % 36).toString(36))
    .join('');
}

function freeText({ model, remark }: FreeText): FreeText {
  return { ...(model ? { model } : {}), ...(remark ? { remark } : {}) };
}

/** A fragment as read, with what this tab keeps under its key. Text in the address comes first. */
export function restoreFreeText(fragment: Fragment): Fragment {
  const { stored } = fragment;
  if (stored === undefined) return fragment;
  const text = tryStorage(() => sessionStorage.getItem(nameOf(stored))) ?? '';
  // Read like an address: what lies in storage is trusted no more than that.
  return { ...freeText(parseFragment(text).fragment), ...fragment };
}

/** Puts the fragment's text in the tab's keeping; `stored` is set where that worked and text is there. */
export function stashFreeText({ stored, ...fragment }: Fragment): Fragment {
  const text = freeText(fragment);
  const key = tryStorage(() => {
    if (Object.keys(text).length > 0) {
      const name = stored ?? newKey();
      sessionStorage.setItem(nameOf(name), formatFragment({ journey: [], details: {}, ...text }));
      return name;
    }
    if (stored !== undefined) sessionStorage.removeItem(nameOf(stored));
    return undefined;
  });
  return { ...fragment, ...defined({ stored: key }) };
}

/** The fragment as an address may hold it: without the text that the tab keeps. */
export function forAddress(fragment: Fragment): Fragment {
  if (fragment.stored === undefined) return fragment;
  const { model: _model, remark: _remark, ...rest } = fragment;
  return rest;
}

/** Does the browser let the tab keep text? Only trying tells. */
export function canStashFreeText(): boolean {
  const tried = stashFreeText({ journey: [], details: {}, remark: '-' });
  stashFreeText({ ...tried, remark: '' });
  return tried.stored !== undefined;
}
