import { keepFragment } from '../shared/skip.ts';
import { mount } from '../shared/mount.ts';
import { pageWords } from '../shared/words.ts';
import { Bench } from './Bench.tsx';
import { createBench } from './state.ts';

keepFragment();
const place = document.getElementById('bench');
if (place) {
  const words = pageWords();
  const unit = place.dataset['unit'] === 'C' ? 'C' : 'F';
  const state = createBench(unit);
  mount(place, () => <Bench words={words} state={state} />);
}
