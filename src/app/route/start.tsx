import { embedded } from '../shared/embedded.ts';
import { makeLateBooks } from '../shared/late-books.ts';
import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { makeGuides } from './guides.ts';
import type { Page } from './page.ts';
import { RoutePage } from './RoutePage.tsx';

const place = document.getElementById('round');
if (place) {
  const files = embedded('files') as Readonly<Record<string, string>>;
  const config = embedded('round-data') as Pick<Page, 'keepCaller'>;
  const page: Page = {
    words: pageWords(),
    ...makeLateBooks(),
    guides: makeGuides(files),
    ...config,
  };
  mount(place, () => <RoutePage page={page} />);
}
