/** Page to waiting worker: use the new release now. */
export const TAKE_OVER = 'take-over';
/** Worker to the newer one that waits: now, the copy in use is recalled. */
export const TAKE_OVER_NOW = 'take-over-now';
/** Page to worker: what is kept; and: keep what is still missing. */
export const [ASK, KEEP] = ['ask', 'keep'] as const;
/** Worker to page, what is kept or why it is not all, as the about page names its sentences. */
export const STATES = ['kept', 'partly', 'not', 'failed', 'altered', 'full'] as const;
export type State = (typeof STATES)[number];
/** Worker to page: not now, another window is in the middle of a guide. */
export const BUSY = 'busy';
