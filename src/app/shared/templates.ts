/**
 * Stands in for `solid-js/web` in the browser (`src/site/build/trusted-templates.ts`). Solid turns
 * each piece of markup in our source into one call of `template` with a fixed string; that
 * call is the only place of the site where text becomes markup, and this policy, which
 * nothing else can reach, the only one that the Content-Security-Policy lets do it.
 */
import { template as make } from 'solid-js/web';

export * from 'solid-js/web';

const policy = globalThis.trustedTypes?.createPolicy('templates', { createHTML: (text) => text });

/** Markup compiled from our own source, as elements. */
export const template: typeof make = (html, ...rest) =>
  // Solid hands the value to `innerHTML` as it is.
  make((policy?.createHTML(html) ?? html) as string, ...rest);
