import { library } from '../shared/books.ts';
import { embedded } from '../shared/embedded.ts';
import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { makeGuides } from './guides.ts';
import { RoundPage } from './RoundPage.tsx';

const place = document.getElementById('round');
if (place) {
  const files = embedded('files') as Readonly<Record<string, string>>;
  const page = { words: pageWords(), library, guides: makeGuides(files) };
  mount(place, () => <RoundPage page={page} />);
}
