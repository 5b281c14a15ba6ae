/** Fills the line kept free beside the firm's hours: open until when, or closed until when. */
import { nameOfDay, openState, timeOfDay } from '../shared/open-now.ts';
import type { OpenHours } from '../shared/open-now.ts';

for (const line of document.querySelectorAll<HTMLElement>('[data-hours]')) {
  const { hours, open, today, later, closed } = line.dataset;
  const state = openState(JSON.parse(hours ?? '') as OpenHours, new Date());
  const locale = document.documentElement.lang;
  const tell = (sentence = '', minute = 0, day = '') =>
    (line.textContent = sentence
      .replace('{{time}}', timeOfDay(locale, minute))
      .replace('{{day}}', day));
  if (state.open) tell(open, state.until);
  else if (state.next?.ahead === 0) tell(today, state.next.from);
  else if (state.next) tell(later, state.next.from, nameOfDay(locale, state.next.day));
  else tell(closed);
}
