/** Absent where the page is not served safely. */
export const workers = (navigator as { serviceWorker?: ServiceWorkerContainer }).serviceWorker;

/** Trusted Types, W3C Working Draft: the part used here, where the browser has it. */
interface TrustedTypes {
  createPolicy(
    name: string,
    rules: { createScriptURL: (url: string) => string },
  ): { createScriptURL(url: string): string };
}
const { trustedTypes } = globalThis as { trustedTypes?: TrustedTypes };

/** Does the reader ask sites to save data? */
export const saves =
  (navigator as { connection?: { saveData?: boolean } }).connection?.saveData === true;

/** Is this page served from what is kept? The browser then looks for updates by itself. */
export const kept = (): boolean => Boolean(workers?.controller);

/**
 * The worker of this page's language: it lies beside the language's manifest, and its
 * scope is that folder. Undefined where the browser has none or the download failed;
 * the site then works as before, with the network.
 */
export async function register(): Promise<ServiceWorkerRegistration | undefined> {
  const manifest = document.querySelector<HTMLLinkElement>('link[rel="manifest"]');
  if (!workers || !manifest) return undefined;
  const url = new URL('sw.js', manifest.href).href;
  const policy = trustedTypes?.createPolicy('worker', { createScriptURL: () => url });
  return workers
    .register(policy ? policy.createScriptURL(url) : url, { updateViaCache: 'none' })
    .catch(() => undefined);
}
