/**
 * On every page that is not in the midst of a guide: the word about a newer release, which waits until
 * the reader takes it, and the newest copy fetched on demand (`data-newest`).
 */
import { BUSY, TAKE_OVER } from './messages.ts';
import { workers } from './registration.ts';

const box = document.querySelector<HTMLElement>('.update');
const said = box?.querySelector('p');
const button = box?.querySelector('button');

function say(what: 'busy' | 'looking' | 'none' | 'failed'): void {
  if (!box || !said || !button) return;
  said.textContent = box.dataset[what] ?? '';
  button.hidden = what !== 'busy';
  box.hidden = false;
}

/** Calls back for a release that is kept whole and waits for its turn. */
function whenWaiting(registration: ServiceWorkerRegistration, then: () => void): void {
  const look = (): void => {
    if (registration.waiting && registration.active) then();
    // It may have been found before this page asked.
    registration.installing?.addEventListener('statechange', look);
  };
  look();
  registration.addEventListener('updatefound', look);
}

/** Resolves when what is being kept is kept, or could not be. */
const installed = (worker?: ServiceWorker | null): Promise<void> =>
  new Promise((done) => {
    const look = (): void => {
      if (worker?.state !== 'installing') done();
    };
    worker?.addEventListener('statechange', look);
    look();
  });

/** The newest copy, the address with its code as it is. A page not from a copy is loaded again. */
async function takeNewest(): Promise<void> {
  const registration = await workers?.getRegistration();
  if (!workers?.controller) {
    location.reload();
    return;
  }
  say('looking');
  try {
    await registration?.update();
  } catch {
    say('failed');
    return;
  }
  await installed(registration?.installing);
  if (registration?.waiting) take(registration);
  else say('none');
}

function take(registration: ServiceWorkerRegistration): void {
  // Only here: the first visit's worker changes the controller too, and nothing reloads then.
  workers?.addEventListener('controllerchange', () => {
    location.reload();
  });
  registration.waiting?.postMessage(TAKE_OVER);
}

async function announce(workers: ServiceWorkerContainer): Promise<void> {
  const registration = await workers.getRegistration();
  if (!registration || !box || !button) return;
  whenWaiting(registration, () => {
    // The desk's page holds a caller's journey in its address.
    if (!/[#&]j=/.test(location.hash)) box.hidden = false;
  });
  button.addEventListener('click', () => {
    take(registration);
  });
  workers.addEventListener('message', ({ data }) => {
    if (data === BUSY) say('busy');
  });
  workers.startMessages();
}

if (workers) void announce(workers);
document.addEventListener('click', ({ target }) => {
  if ((target as Element).closest('[data-newest]')) void takeNewest();
});
