import type { BrowserContext } from '@playwright/test';

/** What went wrong in a browser context, in words, and what a test said it expects. */
export interface Watch {
  /** Everything found so far, expected things included. */
  readonly found: readonly string[];
  /** Says that something matching will be found; not finding it fails the test too. */
  expect(pattern: RegExp): void;
  /** What was found and not expected, then what was expected and not found. */
  verdict(): string[];
}

/** A navigation cuts short what the page it leaves was still loading; nothing is wrong then. */
const CUT_SHORT = 'net::ERR_ABORTED';
/** Playwright's own words where a test lets nothing be kept (`serviceWorkers: 'block'`). */
const BLOCKED = 'Service Worker registration blocked by Playwright';

function origin(url: string): string {
  return new URL(url).origin;
}

/**
 * Watches a context for console errors and warnings, uncaught errors, policy violations, failed
 * requests, and requests that leave the site. Service workers are watched like pages.
 *
 * @param site the site's address; any other origin is reported. `data:` and `blob:` stay inside
 * the page and are let be.
 */
export async function watch(context: BrowserContext, site: string): Promise<Watch> {
  const found: string[] = [];
  const expected: RegExp[] = [];
  const leaves = (url: string) => /^(?:https?|wss?):/.test(url) && origin(url) !== origin(site);

  context.on('console', (message) => {
    const type = message.type();
    if (message.text() === BLOCKED) return;
    if (type === 'error' || type === 'warning')
      found.push(`console ${type} at ${message.location().url}: ${message.text()}`);
  });
  context.on('weberror', (error) => found.push(`uncaught: ${error.error().message}`));
  context.on('request', (request) => {
    if (leaves(request.url())) found.push(`request leaves the site: ${request.url()}`);
  });
  context.on('requestfailed', (request) => {
    const reason = request.failure()?.errorText ?? 'unknown';
    if (reason !== CUT_SHORT) found.push(`request failed (${reason}): ${request.url()}`);
  });
  context.on('response', (response) => {
    if (response.status() >= 400)
      found.push(`answered ${String(response.status())}: ${response.url()}`);
  });
  context.on('page', (page) => {
    page.on('websocket', (socket) => found.push(`opens a socket: ${socket.url()}`));
    page.on('crash', () => found.push(`page crashed: ${page.url()}`));
  });
  // Violations of a report-only policy reach no console of their own.
  await context.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      console.error(`policy violation: ${event.violatedDirective} by ${event.blockedURI}`);
    });
  });

  return {
    found,
    expect: (pattern) => expected.push(pattern),
    verdict: () => [
      ...found.filter((problem) => !expected.some((pattern) => pattern.test(problem))),
      ...expected
        .filter((pattern) => !found.some((problem) => pattern.test(problem)))
        .map((pattern) => `expected, but did not happen: ${String(pattern)}`),
    ],
  };
}
