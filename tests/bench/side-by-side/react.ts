// The guide as a state machine of a general library inside a common framework.
import { useMachine } from '@xstate/react';
import { createElement as h } from 'react';
import { createRoot } from 'react-dom/client';
import { createMachine } from 'xstate';

const guide = GUIDE;
const machine = createMachine({
  initial: guide.start,
  states: Object.fromEntries(
    Object.entries(guide.pages).map(([id, { answers }]) => [
      id,
      { on: Object.fromEntries(answers.map((answer) => [answer.id, { target: answer.to }])) },
    ]),
  ),
});

function App() {
  const [snapshot, send] = useMachine(machine);
  const at: unknown = snapshot.value;
  const page = typeof at === 'string' ? guide.pages[at] : undefined;
  if (page === undefined) return null;
  return [
    h('h1', { key: 'title' }, page.title),
    ...page.lines.map((line) => h('p', { key: line }, line)),
    ...page.answers.map(({ id, label }) =>
      h(
        'button',
        {
          key: `answer ${id}`,
          type: 'button',
          'data-answer': id,
          onClick: () => {
            send({ type: id });
          },
        },
        label,
      ),
    ),
    page.why === ''
      ? null
      : h('details', { key: 'why' }, h('summary', null, 'Why we ask'), h('p', null, page.why)),
  ];
}

const main = document.querySelector('main');
if (main) createRoot(main).render(h(App));
