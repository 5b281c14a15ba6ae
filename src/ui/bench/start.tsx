import { render } from 'solid-js/web';
import { keepFragment } from '../client/skip.ts';
import { pageWords } from '../client/words.ts';
import { Bench } from './Bench.tsx';
import { createBench } from './state.ts';

keepFragment();
const place = document.getElementById('bench');
if (place) {
  const words = pageWords();
  const unit = place.dataset['unit'] === 'C' ? 'C' : 'F';
  const state = createBench(unit);
  render(() => <Bench words={words} state={state} />, place);
}
