import { WithCodebooks } from '../shared/WithCodebooks.tsx';
import { embedded } from '../shared/embedded.ts';
import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { makeGuides } from './guides.ts';
import { RoutePage } from './RoutePage.tsx';

const place = document.getElementById('round');
if (place) {
  const files = embedded('files') as Readonly<Record<string, string>>;
  const words = pageWords();
  mount(place, () => (
    <WithCodebooks words={words}>
      {(codebooks) => {
        // Made once: an attribute's expression would make it again at every reading.
        const page = { words, codebooks, guides: makeGuides(files) };
        return <RoutePage page={page} />;
      }}
    </WithCodebooks>
  ));
}
