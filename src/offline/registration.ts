/** Absent where the page is not served safely. */
export const workers = (navigator as { serviceWorker?: ServiceWorkerContainer }).serviceWorker;

/** Does the reader ask sites to save data? */
export const saves =
  (navigator as { connection?: { saveData?: boolean } }).connection?.saveData === true;

/** Is this page served from what is kept? The browser then looks for updates by itself. */
export const kept = (): boolean => Boolean(workers?.controller);

/** The worker of this page's language lies beside the language's manifest. */
const manifest = document.querySelector<HTMLLinkElement>('link[rel="manifest"]');
const url = manifest ? new URL('sw.js', manifest.href).href : '';
/** Whatever it is asked for, it gives the one address. A policy can be made only once. */
const policy = globalThis.trustedTypes?.createPolicy('worker', { createScriptURL: () => url });

/**
 * Starts the worker; its scope is its folder. Undefined where the browser has none or the
 * first request failed; the site then works as before, with the network.
 */
export async function register(): Promise<ServiceWorkerRegistration | undefined> {
  return workers
    ?.register((policy?.createScriptURL('') ?? url) as string, { updateViaCache: 'none' })
    .catch(() => undefined);
}
