import type { JSX } from 'solid-js';
import { render } from 'solid-js/web';

/** Draw a page's part in place of what says that it has not come (`parts/ScriptFallback.astro`). */
export function mount(place: HTMLElement, part: () => JSX.Element): void {
  place.replaceChildren();
  render(part, place);
}
