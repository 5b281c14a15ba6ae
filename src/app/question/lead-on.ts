/** The page for lost addresses: a journey that led to a page now gone goes on where it can, or to its note. */
import { savedFor, savedAddress } from './saved.ts';
import { lastThere } from './ways-back.ts';

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
// An early tap brings no journey.
const journey = savedAddress(location.href, location.href) ?? savedFor(location.pathname);
if (box && journey) void leadOn(box, journey.href);
