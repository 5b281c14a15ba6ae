import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { LearnPage } from './LearnPage.tsx';

const place = document.getElementById('learn');
if (place) {
  const page = { words: pageWords(), part: place.dataset['part'] ?? '' };
  mount(place, () => <LearnPage page={page} />);
}
