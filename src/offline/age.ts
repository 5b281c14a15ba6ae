/** What the worker says of the copy on the device: how old it is, and whether the site answers. */
import { workers } from './registration.ts';

interface About {
  /** Missing where the site did not answer. */
  readonly least?: number;
  readonly copy?: { readonly release: number; readonly built: string; readonly checked: number };
}

/** “12 days ago”, in the page's language. */
function ago(from: number): string {
  const days = Math.max(0, Math.floor((Date.now() - from) / 86_400_000));
  const { lang } = document.documentElement;
  return new Intl.RelativeTimeFormat(lang, { numeric: 'auto' }).format(-days, 'day');
}

async function tell(boxes: readonly HTMLElement[]): Promise<void> {
  const { scope } = (await workers?.getRegistration()) ?? {};
  const response = await fetch(new URL('recall.json', scope));
  const { least, copy } = (await response.json()) as About;
  if (!copy) return;
  for (const box of boxes) {
    // Where the site answers, only the about page tells.
    if (box.dataset['age'] === 'alone' && least !== undefined) continue;
    const facts: Readonly<Record<string, string>> = {
      when: ago(copy.checked),
      release: String(copy.release),
      built: new Date(copy.built).toLocaleDateString(document.documentElement.lang, {
        ...{ dateStyle: 'long', timeZone: 'UTC' },
      }),
    };
    box.textContent = box.textContent.replaceAll(
      /\{\{(\w+)\}\}/g,
      (_, name: string) => facts[name] ?? '',
    );
    box.hidden = false;
  }
}

const boxes = [...document.querySelectorAll<HTMLElement>('[data-age]')];
// A page not from a copy is as new as the site.
if (boxes.length > 0 && workers?.controller) tell(boxes).catch(() => undefined);
