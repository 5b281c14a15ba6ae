/**
 * Offers the last journey on this device again. A copy that is not an address of ours
 * with a journey is set aside under another key, never followed and never thrown away.
 */
import { STORED as key } from '../shared/stored-journey.ts';
import { tryStorage } from '../shared/storage.ts';
import { SAVED_MOST, savedAddress } from './saved.ts';

const link = document.querySelector<HTMLAnchorElement>('.resume');

function saved(): string | undefined {
  const text = localStorage.getItem(key);
  if (text === null) return undefined;
  const address = savedAddress(text, location.href);
  if (address !== undefined) return address;
  localStorage.setItem(`${key}.broken`, text.slice(0, SAVED_MOST));
  localStorage.removeItem(key);
  return undefined;
}

const href = tryStorage(saved);
if (link && href !== undefined) {
  link.href = href;
  link.hidden = false;
}
