import { keepFragment } from '../client/skip.ts';
import { mount } from '../client/mount.ts';
import { pageWords } from '../client/words.ts';
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
