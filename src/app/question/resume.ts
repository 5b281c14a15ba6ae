/**
 * Offers the last journeys on this device again, the newest first. A newest copy that is not an
 * address of ours with a journey is set aside under another key, never followed and never thrown away.
 */
import { STORED as key, keptJourneys } from '../shared/stored-journey.ts';
import { tryStorage } from '../shared/storage.ts';
import { SAVED_MOST, savedAddress } from './saved.ts';
import { lastThere } from './ways-back.ts';

interface Kept {
  readonly href: string;
  readonly title: string;
}

function saved(): Kept[] {
  const newest = localStorage.getItem(key);
  if (newest !== null && savedAddress(newest, location.href) === undefined) {
    localStorage.setItem(`${key}.broken`, newest.slice(0, SAVED_MOST));
    localStorage.removeItem(key);
  }
  return keptJourneys().flatMap((kept) => {
    const href = savedAddress(kept, location.href);
    return href === undefined ? [] : { href, title: kept.replace(/^\S+ ?/, '') };
  });
}

/** A journey whose page is gone goes on where it can; where it cannot, it is not offered. */
async function there({ href, title }: Kept): Promise<readonly Kept[]> {
  const last = await lastThere(href);
  return last === undefined ? [] : [{ href: last, title: last === href ? title : '' }];
}

const section = document.querySelector<HTMLElement>('.kept');
const link = section?.querySelector<HTMLAnchorElement>('.resume');
const earlier = section?.querySelector<HTMLElement>('.earlier');

async function offer(): Promise<void> {
  const found = await Promise.all((tryStorage(saved) ?? []).map(there));
  const [newest, ...others] = found.flat();
  if (!section || !link || !earlier || !newest) return;
  const where = link.querySelector('small');
  link.href = newest.href;
  if (where) where.textContent = newest.title;
  for (const { href, title } of others) {
    const item = document.createElement('li');
    const other = document.createElement('a');
    other.href = href;
    other.textContent = title || link.innerText;
    item.append(other);
    earlier.querySelector('ul')?.append(item);
  }
  earlier.hidden = others.length === 0;
  section.hidden = false;
  // One thing stands out: what was begun.
  document.querySelector('.button.start')?.classList.add('plain');
}

void offer();
