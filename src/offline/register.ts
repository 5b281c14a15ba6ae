/**
 * Keeps the site for use with no network: once the page is loaded and the browser idle,
 * a worker fetches the rest. Not by itself where the reader asked to save data; the about
 * page has a button.
 */
import { kept, register, saves } from './registration.ts';

const wait = (then: () => void): void => {
  // Safari has no idle callback; two seconds after loading most phones rest.
  if ('requestIdleCallback' in window) requestIdleCallback(then);
  else setTimeout(then, 2000);
};

if (!saves && !kept())
  addEventListener('load', () => {
    wait(() => void register());
  });
