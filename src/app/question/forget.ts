/** The about page's button that takes this site's copies off the device. */
import { FORGOTTEN } from '../shared/stored-journey.ts';
import { tryStorage } from '../shared/storage.ts';

const button = document.querySelector<HTMLButtonElement>('.forget');
const told = document.querySelector<HTMLElement>('[data-cleared]');
if (button && told) {
  button.hidden = false;
  button.addEventListener('click', () => {
    tryStorage(() => {
      for (const store of [localStorage, sessionStorage])
        for (const key of Object.keys(store)) if (key.startsWith('hobnote.')) store.removeItem(key);
      localStorage.setItem(FORGOTTEN, '');
    });
    told.textContent = told.dataset['cleared'] ?? '';
  });
}
