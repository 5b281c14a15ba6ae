/** The first page's word about a newer release: it waits until the reader takes it. */
import { BUSY, TAKE_OVER } from './messages.ts';
import { workers } from './registration.ts';

const box = document.querySelector<HTMLElement>('.update');
const said = box?.querySelector('p');
const button = box?.querySelector('button');

/** Calls back for a release that is kept whole and waits for its turn. */
function whenWaiting(registration: ServiceWorkerRegistration, then: () => void): void {
  const look = (): void => {
    if (registration.waiting && registration.active) then();
  };
  look();
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', look);
  });
}

async function announce(workers: ServiceWorkerContainer): Promise<void> {
  const registration = await workers.getRegistration();
  if (!registration || !box || !said || !button) return;
  whenWaiting(registration, () => (box.hidden = false));
  button.addEventListener('click', () => {
    // Only here: the first visit's worker changes the controller too, and nothing reloads then.
    workers.addEventListener('controllerchange', () => location.reload());
    registration.waiting?.postMessage(TAKE_OVER);
  });
  workers.addEventListener('message', ({ data }) => {
    if (data === BUSY) said.textContent = box.dataset['busy'] ?? '';
  });
  workers.startMessages();
}

if (workers) void announce(workers);
