// The ten parts the pages are made of, each with examples: where one stands, and how it is laid out.
import type { Page } from '@playwright/test';
import { written } from './preview.ts';

/** One state of a component. */
export interface Example {
  readonly state: string;
  /** From the site's root. */
  readonly path: string;
  readonly part: string;
  /** What brings it into this state. */
  readonly use?: (page: Page) => Promise<unknown>;
  /** Its children in sight: those side by side joined by spaces, rows by slashes. Left out where it is text that wraps. */
  readonly rows?: string;
}

const NOTE = written('danger.none since.over-4 near.quiet display.lock', { release: 5 });
const visit = `/preview/#c=${NOTE}`;
const asked = (node: string, journey: string) =>
  `/door-locked/${node}/#g=door-locked&j=danger.none${journey}`;
const near = asked('near', '~since.unsure');
const wait = asked('wait', '~since.unsure~near.heat');
const display = asked('display', '~since.unsure~near.quiet');

export const components: Readonly<Record<string, readonly Example[]>> = {
  'answer row': [
    { state: 'a picture', path: display, part: '.answers a >> nth=0', rows: 'svg span' },
    { state: 'words', path: near, part: '.answers a >> nth=0' },
    {
      state: 'tapped once',
      path: '/door-locked/danger/',
      part: '[data-confirm]',
      use: (page) => page.locator('[data-confirm]').click(),
    },
  ],
  'care box': [
    { state: 'danger', path: '/burner/gas-off/', part: '.care', rows: 'h2 / p' },
    { state: 'warning', path: wait, part: '.care', rows: 'h2 / p' },
    { state: 'caution', path: near, part: '.care', rows: 'h2 / p' },
    { state: 'notice', path: '/error-shows/finish-clear/', part: '.care', rows: 'h2 / p' },
  ],
  'stop band': [
    { state: 'stop', path: '/door-locked/stop-gas/', part: '.head', rows: 'h1 div' },
    { state: 'done', path: '/door-locked/finish-open/', part: '.head', rows: 'h1 div' },
  ],
  'code plate': [
    { state: 'note', path: near.replace('door-locked/near', 'note'), part: '.code-card > .groups' },
  ],
  'stage bar': [
    { state: 'first', path: '/door-locked/danger/', part: '.stages', rows: 'li li li li' },
    { state: 'checks', path: near, part: '.stages', rows: 'li li li li' },
  ],
  'window bar': [
    { state: 'not begun', path: wait, part: '.timer', rows: 'p button' },
    {
      state: 'running',
      path: wait,
      part: '.timer',
      use: (page) => page.locator('.timer .start').click(),
      rows: 'ul / p button / label / p',
    },
  ],
  'summary strip': [{ state: 'a visit', path: visit, part: '.outcome' }],
  'fault row': [{ state: 'folded', path: visit, part: '.fault > summary >> nth=0' }],
  'check row': [{ state: 'folded', path: visit, part: '.check > summary >> nth=0' }],
  chip: [{ state: 'a fact', path: visit, part: '.facts > li >> nth=0' }],
};
