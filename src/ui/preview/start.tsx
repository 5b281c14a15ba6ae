import { render } from 'solid-js/web';
import { library } from '../client/books.ts';
import { embedded } from '../client/embedded.ts';
import { keepFragment } from '../client/skip.ts';
import { pageWords } from '../client/words.ts';
import { Preview } from './Preview.tsx';
import type { Carried } from './page.ts';
import { createPreviewState } from './state.ts';

keepFragment();
const place = document.getElementById('preview');
if (place) {
  const page = { words: pageWords(), library, ...(embedded('preview-data') as Carried) };
  render(() => {
    // Made once: an attribute's expression would run again at every reading.
    const state = createPreviewState(library);
    return <Preview page={page} state={state} />;
  }, place);
}
