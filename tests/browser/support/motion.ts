import type { Page } from '@playwright/test';

/** What moves longer than this many seconds is motion: less is a change at once. */
const AT_ONCE = 0.01;

/** Notes every call that asks for smooth scrolling; before the page is opened. */
export async function noteSmoothScrolls(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const noted: string[] = [];
    Object.assign(window, { smoothScrolls: noted });
    for (const [of, name] of [
      [Element.prototype, 'scrollIntoView'],
      [Element.prototype, 'scrollTo'],
      [window, 'scrollTo'],
      [window, 'scrollBy'],
    ] as const) {
      const object = of as unknown as Record<string, (...given: unknown[]) => unknown>;
      const own = object[name];
      object[name] = function (this: unknown, ...given) {
        if (JSON.stringify(given).includes('smooth')) noted.push(name);
        return own?.apply(this, given);
      };
    }
  });
}

/** What moves on the page, or would when it changes, in words. */
export async function moving(page: Page): Promise<string[]> {
  return page.evaluate((most) => {
    const seconds = (list: string) =>
      Math.max(
        ...list.split(',').map((text) => parseFloat(text) / (text.includes('ms') ? 1000 : 1)),
      );
    const named = (element: Element) =>
      `${element.localName}.${element.getAttribute('class') ?? ''}`;
    const running = document
      .getAnimations()
      .filter(({ effect }) => Number(effect?.getComputedTiming().activeDuration) > 1000 * most)
      .map(() => 'an animation runs');
    const styled = [...document.querySelectorAll('*')].flatMap((element) =>
      [undefined, '::before', '::after', '::backdrop'].flatMap((part) => {
        const style = getComputedStyle(element, part);
        return [
          ...(style.scrollBehavior === 'smooth' ? [`${named(element)} scrolls smoothly`] : []),
          ...(style.transitionProperty !== 'none' && seconds(style.transitionDuration) > most
            ? [`${named(element)} has a transition`]
            : []),
          ...(style.animationName !== 'none' && seconds(style.animationDuration) > most
            ? [`${named(element)} has an animation`]
            : []),
        ];
      }),
    );
    const asked = (window as unknown as { smoothScrolls?: string[] }).smoothScrolls ?? [];
    return [...running, ...styled, ...asked.map((name) => `${name} is asked to be smooth`)];
  }, AT_ONCE);
}
