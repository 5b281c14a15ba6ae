import { makeLateBooks } from '../shared/late-books.ts';
import { jobLabels } from '../shared/job-text.ts';
import { embedded } from '../shared/embedded.ts';
import { keepFragment } from '../shared/skip.ts';
import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { Preview } from './Preview.tsx';
import type { PreviewConfig, Page } from './page.ts';
import { createPreviewState } from './state.ts';

keepFragment();
const place = document.getElementById('preview');
if (place) {
  const books = makeLateBooks();
  const { codebooks } = books;
  const page: Page = {
    words: pageWords(),
    codebooks,
    files: embedded('files') as Page['files'],
    ...(embedded('preview-data') as PreviewConfig),
    // Loaded with the guide a code is of.
    models: {},
    staffViews: {},
  };
  mount(place, () => {
    // Made once: an attribute's expression would run again at every reading.
    const state = createPreviewState(page.newest, books, jobLabels(page.words));
    return <Preview page={page} state={state} />;
  });
}
