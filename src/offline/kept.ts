/** The about page: is the site kept on this device, and a button that keeps it. */
import { register, saves, workers } from './registration.ts';

const box = document.querySelector<HTMLElement>('.offline');
const button = box?.querySelector<HTMLButtonElement>('.keep');

function show(state: 'none' | 'not' | 'keeping' | 'kept' | 'failed'): void {
  for (const span of box?.querySelectorAll<HTMLElement>('[data-state]') ?? [])
    span.hidden = span.dataset['state'] !== state;
  if (button) button.hidden = state !== 'not' && state !== 'failed';
}

/** Follows the first download to its end. */
function follow(worker: ServiceWorker): void {
  show('keeping');
  worker.addEventListener('statechange', () => {
    if (worker.state === 'redundant') show('failed');
    else if (worker.state !== 'installing') show('kept');
  });
}

function tell(registration: ServiceWorkerRegistration | undefined): void {
  if (!registration) show('failed');
  else if (registration.active) show('kept');
  else if (registration.installing) follow(registration.installing);
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
