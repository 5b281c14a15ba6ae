/** The about page's button that takes this site's copies off the device. */
const button = document.querySelector<HTMLButtonElement>('.forget');
const told = document.querySelector<HTMLElement>('[data-cleared]');
if (button && told) {
  button.hidden = false;
  button.addEventListener('click', () => {
    try {
      for (const store of [localStorage, sessionStorage])
        for (const key of Object.keys(store)) if (key.startsWith('hobnote.')) store.removeItem(key);
    } catch {
      // Blocked storage holds nothing of ours.
    }
    told.textContent = told.dataset['cleared'] ?? '';
  });
}

export {};
