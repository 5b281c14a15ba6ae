/** The page for lost addresses: a journey that led to a page now gone goes on where it can, or to its note. */
import { STORED } from '../shared/stored-journey.ts';
import { tryStorage } from '../shared/storage.ts';
import { savedAddress } from './saved.ts';
import { lastThere } from './ways-back.ts';

/** The journey in the address; of an early tap, which brings none, the one kept for this page. */
function journeyHere(): string | undefined {
  const here = savedAddress(location.href, location.href);
  const kept = savedAddress(tryStorage(() => localStorage.getItem(STORED)) ?? '', location.href);
  return (here ?? (kept?.pathname === location.pathname ? kept : undefined))?.href;
}

async function leadOn(box: HTMLElement, journey: string): Promise<void> {
  const [back, note] = box.querySelectorAll('a');
  const there = await lastThere(journey);
  if (back) {
    back.href = there ?? back.href;
    back.hidden = there === undefined || there === journey;
  }
  if (note) note.hash = new URL(journey).hash;
  box.hidden = false;
  document.querySelector<HTMLElement>('.not-here')?.setAttribute('hidden', '');
}

const box = document.querySelector<HTMLElement>('.gone');
const journey = journeyHere();
if (box && journey !== undefined) void leadOn(box, journey);
