/**
 * Keeps the site for use with no network: once the page is loaded, a worker fetches the rest, of
 * low priority. It does not wait for an idle browser: a busy one left even a page in sight waiting
 * for that in vain. Not by itself where the reader asked to save data; the about page has a button.
 */
import { kept, register, saves } from './registration.ts';

if (!saves && !kept()) addEventListener('load', () => void register());
