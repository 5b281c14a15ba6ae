/**
 * On the pages that readers come to first: what the worker asks for first, as the build names it
 * there, is on its way before the worker is.
 */
import { kept, manifest, saves } from './registration.ts';

// Apart: the build takes `new URL(…, import.meta.url)` for a file of its own.
const { url } = import.meta;

if (!saves && !kept())
  addEventListener('load', () => {
    for (const name of manifest?.dataset['kept']?.split(' ') ?? []) {
      const hint = { rel: 'prefetch', href: new URL(`kept/${name}.json`, url).href };
      document.head.append(Object.assign(document.createElement('link'), hint));
    }
  });
