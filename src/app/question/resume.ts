/**
 * Offers the last journeys on this device again, the newest first. What was true in the kitchen
 * hours ago may not be now: some hours later the danger comes first, a day later only the note is
 * offered, and the guide begins anew. A newest copy that is not an
 * address of ours with a journey is set aside under another key, never followed and never thrown away.
 */
import { STORED as key, keptJourneys } from '../shared/stored-journey.ts';
import { tryStorage } from '../shared/storage.ts';
import { hashOf, parseRaw } from '../../address/grammar.ts';
import { SAVED_MOST, savedAddress } from './saved.ts';
import { lastThere } from './ways-back.ts';

interface Kept {
  readonly href: string;
  readonly title: string;
  /** Hours since it was kept; NaN where that is not known. */
  readonly hours: number;
}

/** Up to so many hours the answers still stand. */
const FRESH = 4;
const DAY = 24;

function saved(): Kept[] {
  const newest = localStorage.getItem(key);
  if (newest !== null && savedAddress(newest, location.href) === undefined) {
    localStorage.setItem(`${key}.broken`, newest.slice(0, SAVED_MOST));
    localStorage.removeItem(key);
  }
  return keptJourneys().flatMap((kept) => {
    const url = savedAddress(kept, location.href);
    const [, minute = '', ...title] = kept.split(' ');
    const hours = (Date.now() / 60_000 - parseInt(minute, 36)) / 60;
    return url === undefined ? [] : { href: url.href, title: title.join(' '), hours };
  });
}

/** The note of a journey, of the day it was kept. */
function noteOf(href: string, day: Date): string {
  const url = new URL(href);
  url.pathname = url.pathname.replace(/[^/]+\/[^/]+\/$/, 'note/');
  const date = [day.getFullYear(), day.getMonth() + 1, day.getDate()];
  const on = date.map((part) => String(part).padStart(2, '0')).join('-');
  url.hash = hashOf({ ...parseRaw(url.hash), w: '', on });
  return url.href;
}

/** Leads a link to a journey, as far as its age allows, and says what it leads to. */
function lead(link: HTMLAnchorElement, { href, title, hours }: Kept, words: DOMStringMap): string {
  link.href = href;
  if (hours > DAY) {
    const day = new Date(Date.now() - hours * 3_600_000);
    link.href = noteOf(href, day);
    const said = day.toLocaleDateString(document.documentElement.lang, { dateStyle: 'full' });
    return (words['old'] ?? '').replace('{{day}}', said);
  }
  // A clock that was set back tells no age.
  if (!(hours >= 0 && hours <= FRESH)) {
    link.onclick = (event) => {
      event.preventDefault();
      link.onclick = null;
      const tell = document.querySelector('.kept [data-tell]');
      if (tell) tell.textContent = `${words['look'] ?? ''}: ${link.innerText}`;
    };
  }
  return title;
}

/** A journey whose page is gone goes on where it can; where it cannot, it is not offered. */
async function there({ href, title, hours }: Kept): Promise<readonly Kept[]> {
  const last = await lastThere(href);
  return last === undefined ? [] : [{ href: last, title: last === href ? title : '', hours }];
}

const section = document.querySelector<HTMLElement>('.kept');
const link = section?.querySelector<HTMLAnchorElement>('.resume');
const earlier = section?.querySelector<HTMLElement>('.earlier');

function offer([newest, ...others]: readonly Kept[]): void {
  section?.toggleAttribute('hidden', !newest);
  if (!section || !link || !earlier || !newest) return;
  const where = link.querySelector('small');
  const what = lead(link, newest, section.dataset);
  if (where) where.textContent = what;
  const list = earlier.querySelector('ul');
  list?.replaceChildren();
  for (const kept of others) {
    const item = document.createElement('li');
    const other = document.createElement('a');
    other.textContent = lead(other, kept, section.dataset) || link.innerText;
    item.append(other);
    list?.append(item);
  }
  earlier.hidden = others.length === 0;
  // One thing stands out: what was begun.
  document.querySelector('.button.start')?.classList.add('plain');
}

const kept = tryStorage(saved) ?? [];
offer(kept);
// Pages seldom go, and no question waits for that.
addEventListener('load', () => {
  const look = async (): Promise<void> => {
    const found = (await Promise.all(kept.map(there))).flat();
    if (found.map(({ href }) => href).join() !== kept.map(({ href }) => href).join()) offer(found);
  };
  setTimeout(() => void look());
});
