/** Page to waiting worker: use the new release now. */
export const TAKE_OVER = 'take-over';
/** Worker to the newer one that waits: now, the copy in use is recalled. */
export const TAKE_OVER_NOW = 'take-over-now';
/** Worker to page, why it could not keep the site, as the about page names its sentences. */
export const [ALTERED, FULL] = ['altered', 'full'] as const;
/** Worker to page: not now, another window is in the middle of a guide. */
export const BUSY = 'busy';
