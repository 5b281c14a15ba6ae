import { embedded } from '../shared/embedded.ts';
import { makeLateBooks } from '../shared/late-books.ts';
import { keepFragment } from '../shared/skip.ts';
import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { Calls } from './Calls.tsx';
import type { DeskConfig } from './page.ts';

keepFragment();
const place = document.getElementById('desk');
if (place) {
  const files = embedded('files') as Readonly<Record<string, string>>;
  const config = embedded('desk-data') as DeskConfig;
  const shell = { ...config, ...makeLateBooks(), words: pageWords(), files };
  mount(place, () => <Calls shell={shell} />);
}
