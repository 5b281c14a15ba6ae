import type { Codebook } from '../../note/codebook.ts';
import { embedded } from '../shared/embedded.ts';
import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { makeGuides } from './guides.ts';
import { RoutePage } from './RoutePage.tsx';

const codebooks = new Map<number, Codebook>();
const addBooks = async (): Promise<void> => {
  const books = await import('../shared/books.ts');
  await books.addEarlier();
  for (const [release, codebook] of books.codebooks) codebooks.set(release, codebook);
};
const place = document.getElementById('round');
if (place) {
  const files = embedded('files') as Readonly<Record<string, string>>;
  const page = { words: pageWords(), codebooks, addBooks, guides: makeGuides(files) };
  mount(place, () => <RoutePage page={page} />);
}
