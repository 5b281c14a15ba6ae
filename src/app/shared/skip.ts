/** The skip link would put its own fragment in place of the one that holds the journey or the note. */
export function keepFragment(): void {
  document.querySelector('.skip')?.addEventListener('click', (event) => {
    event.preventDefault();
    document.querySelector('main')?.focus();
  });
}
