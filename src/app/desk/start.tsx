import { newestRelease } from '../../note/library.ts';
import { library } from '../shared/books.ts';
import { embedded } from '../shared/embedded.ts';
import { keepFragment } from '../shared/skip.ts';
import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { Calls } from './Calls.tsx';
import type { Carried } from './page.ts';

keepFragment();
const place = document.getElementById('desk');
const book = library.get(newestRelease(library) ?? 0);
if (place) {
  const words = pageWords();
  const files = embedded('files') as Readonly<Record<string, string>>;
  const carried = embedded('desk-data') as Carried;
  mount(place, () =>
    book ? (
      <Calls shell={{ ...carried, words, library, book, files }} />
    ) : (
      <p class="told">{words.t('desk:noBook')}</p>
    ),
  );
}
