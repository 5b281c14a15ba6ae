import { newestRelease } from '../../note/library.ts';
import { library } from '../client/books.ts';
import { embedded } from '../client/embedded.ts';
import { keepFragment } from '../client/skip.ts';
import { mount } from '../client/mount.ts';
import { pageWords } from '../client/words.ts';
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
      <p class="told">{words.t('noBook')}</p>
    ),
  );
}
