/** The about page's button that takes this site's copies off the device. */
const button = document.querySelector<HTMLButtonElement>('.forget');
const status = document.querySelector<HTMLElement>('[data-cleared]');
if (button && status) {
  button.hidden = false;
  button.addEventListener('click', () => {
    try {
      for (const key of Object.keys(localStorage))
        if (key.startsWith('hobnote.')) localStorage.removeItem(key);
    } catch {
      // Blocked storage holds nothing of ours.
    }
    status.textContent = status.dataset['cleared'] ?? '';
  });
}
