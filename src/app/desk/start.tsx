import { newestRelease } from '../../note/library.ts';
import { WithLibrary } from '../shared/WithLibrary.tsx';
import { embedded } from '../shared/embedded.ts';
import { keepFragment } from '../shared/skip.ts';
import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { Calls } from './Calls.tsx';
import type { Carried } from './page.ts';

keepFragment();
const place = document.getElementById('desk');
if (place) {
  const words = pageWords();
  const files = embedded('files') as Readonly<Record<string, string>>;
  const carried = embedded('desk-data') as Carried;
  mount(place, () => (
    <WithLibrary words={words}>
      {(library) => {
        const book = library.get(newestRelease(library) ?? 0);
        if (!book) return <p class="told">{words.t('desk:noBook')}</p>;
        const shell = { ...carried, words, library, book, files };
        return <Calls shell={shell} />;
      }}
    </WithLibrary>
  ));
}
