/** Page to waiting worker: use the new release now. */
export const TAKE_OVER = 'take-over';
/** Worker to page: not now, another window is in the middle of a guide. */
export const BUSY = 'busy';
