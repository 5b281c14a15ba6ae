/**
 * Offers the last journey on this device again. A copy that is not an address of ours
 * with a journey is set aside under another key, never followed and never thrown away.
 */
import { parseJourney } from '../../guide/journey-text.ts';

const key = 'hobnote.journey';
const link = document.querySelector<HTMLAnchorElement>('.resume');

function saved(): string | undefined {
  try {
    const text = localStorage.getItem(key);
    if (text === null) return undefined;
    const address = text.length < 5000 ? new URL(text, location.href) : undefined;
    const hash = new URLSearchParams(address?.hash.slice(1));
    const right =
      address?.origin === location.origin &&
      /^\/[\w./-]*$/.test(address.pathname) &&
      parseJourney(hash.get('j') ?? '').length > 0;
    if (address && right) return address.href;
    localStorage.setItem(`${key}.broken`, text.slice(0, 5000));
    localStorage.removeItem(key);
  } catch {
    // Blocked or full storage: there is nothing to resume from, and nothing is lost.
  }
  return undefined;
}

const href = saved();
if (link && href !== undefined) {
  link.href = href;
  link.hidden = false;
}
