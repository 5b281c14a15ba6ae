/** What `recall.json` says of copies kept on devices, and what that means for one of them. */

export interface Recall {
  /** The least release whose pages may still be shown. */
  readonly least: number;
  /**
   * Every correction that copies must not go without, in order: a page, a guide (`/guide/`) or all
   * (`/`). It only grows. A copy knows those that were made before it; what is named more often by
   * now was corrected since.
   */
  readonly pages: readonly string[];
}

/** What a copy is. */
export interface Copy {
  readonly release: number;
  /** The corrections it was made with. */
  readonly pages: readonly string[];
}

const DAY = 86_400_000;

/** Undefined for anything else: a network that wants a sign-in answers with a page of its own. */
export function parseRecall(value: unknown): Recall | undefined {
  const { least, pages } = (value ?? {}) as Partial<Record<keyof Recall, unknown>>;
  return Number.isInteger(least) &&
    Array.isArray(pages) &&
    pages.every((page): page is string => typeof page === 'string')
    ? { least: least as number, pages }
    : undefined;
}

/** A guide's page, by its address below the copy's own: `<guide>/<node>/`. */
export const isGuidePage = (path: string): boolean =>
  /^(?!care\/|map\/)[\w-]+\/[\w-]+\/$/.test(path);

/** Must the copy's page not be shown? */
export function recalls(recall: Recall, copy: Copy, path: string): boolean {
  const times = (pages: readonly string[]) =>
    pages.filter((page) => `/${path}`.startsWith(page)).length;
  return (
    isGuidePage(path) && (copy.release < recall.least || times(recall.pages) > times(copy.pages))
  );
}

/** Whole days; none where the clock stands before the time it counts from. */
export const daysOld = (from: number, now: number): number =>
  Math.max(0, Math.floor((now - from) / DAY));
