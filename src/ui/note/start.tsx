import { render } from 'solid-js/web';
import { newestRelease } from '../../note/library.ts';
import { library } from '../client/books.ts';
import { embedded } from '../client/embedded.ts';
import { keepFragment } from '../client/skip.ts';
import { pageWords } from '../client/words.ts';
import { NotePage } from './NotePage.tsx';
import type { Calls } from './calls.ts';
import { createNoteState } from './state.ts';

keepFragment();
const place = document.getElementById('note');
const book = library.get(newestRelease(library) ?? 0);
if (place) {
  const words = pageWords();
  // Made here, not in the markup: a prop is an expression that is run at every reading.
  const state = createNoteState();
  const calls = embedded('calls') as Calls;
  const page = () =>
    book ? (
      <NotePage library={library} book={book} words={words} calls={calls} state={state} />
    ) : (
      <p class="told">{words.t('noBook')}</p>
    );
  render(page, place);
}
