// The guide as a plain app in one page: a signal and a list.
import { For, createSignal } from 'solid-js';
import { render } from 'solid-js/web';
import type { Page } from './pages.ts';

function App() {
  const guide = GUIDE;
  const [at, go] = createSignal(guide.start);
  const page = (): Page | undefined => guide.pages[at()];
  return (
    <>
      <h1>{page()?.title}</h1>
      <For each={page()?.lines}>{(line) => <p>{line}</p>}</For>
      <For each={page()?.answers}>
        {(answer) => (
          <button type="button" data-answer={answer.id} onClick={() => go(answer.to)}>
            {answer.label}
          </button>
        )}
      </For>
      <details hidden={!page()?.why}>
        <summary>Why we ask</summary>
        <p>{page()?.why}</p>
      </details>
    </>
  );
}

const main = document.querySelector('main');
if (main) render(() => <App />, main);
