/**
 * Keeps the site for use with no network once the page is loaded; an idle browser may never come. Not
 * by itself where the reader asked to save data: the about page has a button.
 */
import { kept, register, saves } from './registration.ts';

if (!saves && !kept())
  addEventListener('load', () => {
    // Pages that readers come to first say what it asks for first: that is on its way before it is.
    // Not as links: Firefox takes what they fetch ahead for what the policy forbids.
    for (const url of document.head.dataset['ahead']?.split(' ') ?? [])
      void fetch(url).catch(() => undefined);
    void register();
  });
