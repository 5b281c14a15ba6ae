/** The about page: is the site kept on this device, and a button that keeps it. */
import { ASK, KEEP, STATES, type State } from './messages.ts';
import { register, saves, workers } from './registration.ts';

const box = document.querySelector<HTMLElement>('.offline');
const button = box?.querySelector<HTMLButtonElement>('.keep');

/** Why the last download failed. */
let why: State = 'failed';

function show(state: 'none' | 'keeping' | State): void {
  for (const span of box?.querySelectorAll<HTMLElement>('[data-state]') ?? [])
    span.hidden = span.dataset['state'] !== state;
  if (button) button.hidden = state !== 'not' && state !== why;
}

/** Follows the first download until a guide works, then asks for the rest. */
function follow(worker: ServiceWorker): void {
  const look = (): void => {
    if (worker.state === 'redundant') show(why);
    else if (worker.state === 'activated') worker.postMessage(KEEP);
    else show('keeping');
  };
  why = 'failed';
  look();
  worker.addEventListener('statechange', look);
}

function tell(registration: ServiceWorkerRegistration | undefined, asked = !saves): void {
  const { active, installing } = registration ?? {};
  if (active) active.postMessage(asked ? KEEP : ASK);
  else if (installing) follow(installing);
  else show(why);
}

async function start(workers: ServiceWorkerContainer): Promise<void> {
  workers.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
    const state = STATES.find((one) => one === data);
    if (!state) return;
    if (state === 'failed' || state === 'altered' || state === 'full') why = state;
    show(state);
  });
  workers.startMessages();
  const registration = await workers.getRegistration();
  if (registration || !saves) tell(registration ?? (await register()));
  else show('not');
  button?.addEventListener('click', () => void register().then((now) => tell(now, true)));
}

if (box) {
  box.hidden = false;
  if (workers) void start(workers);
  else show('none');
}
