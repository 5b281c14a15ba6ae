/** The about page's button that takes this site's copies off the device; a tap before it shows it. */
import { FORGOTTEN } from '../shared/stored-journey.ts';
import { tryStorage } from '../shared/storage.ts';

const asked = document.querySelector<HTMLElement>('.forget');
const told = document.querySelector<HTMLElement>('[data-cleared]');
if (asked && told) {
  asked.hidden = false;
  asked.querySelector('button')?.addEventListener('click', () => {
    tryStorage(() => {
      for (const store of [localStorage, sessionStorage])
        for (const key of Object.keys(store)) if (key.startsWith('hobnote.')) store.removeItem(key);
      localStorage.setItem(FORGOTTEN, '');
    });
    told.textContent = told.dataset['cleared'] ?? '';
  });
}
