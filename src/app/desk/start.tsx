import { newestRelease } from '../../note/codebook.ts';
import { codebooks } from '../shared/books.ts';
import { embedded } from '../shared/embedded.ts';
import { keepFragment } from '../shared/skip.ts';
import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { Calls } from './Calls.tsx';
import type { DeskConfig } from './page.ts';

keepFragment();
const place = document.getElementById('desk');
const codebook = codebooks.get(newestRelease(codebooks) ?? 0);
if (place) {
  const words = pageWords();
  const files = embedded('files') as Readonly<Record<string, string>>;
  const config = embedded('desk-data') as DeskConfig;
  mount(place, () =>
    codebook ? (
      <Calls shell={{ ...config, words, codebooks, codebook, files }} />
    ) : (
      <p class="told">{words.t('desk:noBook')}</p>
    ),
  );
}
