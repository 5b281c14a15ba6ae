/** The about page: is the site kept on this device, and a button that keeps it. */
import { ALTERED, FULL } from './messages.ts';
import { register, saves, workers } from './registration.ts';

const box = document.querySelector<HTMLElement>('.offline');
const button = box?.querySelector<HTMLButtonElement>('.keep');

/** Why the last download failed. */
let why: 'failed' | typeof ALTERED | typeof FULL = 'failed';

function show(state: 'none' | 'not' | 'keeping' | 'kept' | typeof why): void {
  for (const span of box?.querySelectorAll<HTMLElement>('[data-state]') ?? [])
    span.hidden = span.dataset['state'] !== state;
  if (button) button.hidden = state !== 'not' && state !== why;
}

/** Follows the first download to its end. */
function follow(worker: ServiceWorker): void {
  const look = (): void => {
    if (worker.state === 'redundant') show(why);
    else show(worker.state === 'installing' ? 'keeping' : 'kept');
  };
  why = 'failed';
  look();
  worker.addEventListener('statechange', look);
  workers?.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
    if (data !== ALTERED && data !== FULL) return;
    why = data;
    look();
  });
}

function tell(registration: ServiceWorkerRegistration | undefined): void {
  if (registration?.active) show('kept');
  else if (registration?.installing) follow(registration.installing);
  else show(why);
}

async function start(workers: ServiceWorkerContainer): Promise<void> {
  const registration = await workers.getRegistration();
  if (registration || !saves) tell(registration ?? (await register()));
  else show('not');
  button?.addEventListener('click', () => void register().then(tell));
}

if (box) {
  box.hidden = false;
  if (workers) void start(workers);
  else show('none');
}
