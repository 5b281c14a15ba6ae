import { Show, createMemo } from 'solid-js';
import { makeCodebooks } from '../../note/codebook.ts';
import { Fetching } from '../shared/Fetching.tsx';
import { embedded } from '../shared/embedded.ts';
import { createFetched } from '../shared/fetched.ts';
import { mount } from '../shared/mount.ts';
import { keepFragment } from '../shared/skip.ts';
import { pageWords } from '../shared/words.ts';
import { NotePage } from './NotePage.tsx';
import type { NotePart } from './part.ts';
import { createNoteState, type NoteState } from './state.ts';

/** The page for a guide whose part has been loaded. */
function Loaded(props: { readonly part: NotePart; readonly state: NoteState }) {
  const codebooks = createMemo(() => makeCodebooks([props.part.release]));
  const words = createMemo(() => pageWords(props.part.texts));
  return (
    <Show when={codebooks().get(props.part.release.release)}>
      {(codebook) => (
        <NotePage
          codebooks={codebooks()}
          codebook={codebook()}
          part={props.part}
          words={words()}
          state={props.state}
        />
      )}
    </Show>
  );
}

keepFragment();
const place = document.getElementById('note');
if (place) {
  const words = pageWords();
  const files = embedded('files') as Readonly<Record<string, string>>;
  const [main] = Object.keys(files);
  mount(place, () => {
    // Made once: an attribute's expression would run again at every reading.
    const state = createNoteState();
    const guide = () => state.fragment().guide ?? '';
    const fetched = createFetched<NotePart>(() =>
      // An address of old names no guide; one of the wrong form may name any.
      Object.hasOwn(files, guide()) ? files[guide()] : files[main ?? ''],
    );
    return (
      <Show when={fetched.value()} keyed fallback={<Fetching words={words} fetched={fetched} />}>
        {(part) => <Loaded part={part} state={state} />}
      </Show>
    );
  });
}
