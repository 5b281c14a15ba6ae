/**
 * Where a step heats or moves the breaker or the door, a page takes no journey that does not lead to
 * it from its guide's start. `question.ts` asks; other pages have nobody to ask.
 */
import { leadsTo, type Walks } from '../../journey/walks.ts';

export interface Guarded extends HTMLElement {
  /** @param j the journey as it stands in the address */
  leadsHere?: (first: string, j: string) => boolean;
}

const page = document.querySelector<Guarded>('.page');
const text = document.querySelector('#walks')?.textContent;
if (page && text) {
  const walks = JSON.parse(text) as Walks;
  const [here = ''] = Object.keys(walks.edges);
  page.leadsHere = (first, j) => leadsTo(walks, here, first, j);
}
