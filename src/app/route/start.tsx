import { WithLibrary } from '../shared/WithLibrary.tsx';
import { embedded } from '../shared/embedded.ts';
import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { makeGuides } from './guides.ts';
import { RoundPage } from './RoundPage.tsx';

const place = document.getElementById('round');
if (place) {
  const files = embedded('files') as Readonly<Record<string, string>>;
  const words = pageWords();
  mount(place, () => (
    <WithLibrary words={words}>
      {(library) => {
        // Made once: an attribute's expression would make it again at every reading.
        const page = { words, library, guides: makeGuides(files) };
        return <RoundPage page={page} />;
      }}
    </WithLibrary>
  ));
}
