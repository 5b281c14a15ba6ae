/** The tab's session storage, where the firm has switched it on (`desk: keep-caller: tab`). */
import { tryStorage } from '../shared/storage.ts';

/** Of a `Storage` what is needed; undefined keeps nothing. */
export type Keeper = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> | undefined;

/** What is kept under a name; undefined where there is nothing, or nothing that can be read. */
export const kept = (keeper: Keeper, key: string): unknown =>
  tryStorage((): unknown => JSON.parse(keeper?.getItem(key) ?? 'null'));

/** Keep a value, or nothing where it is undefined. */
export function keep(keeper: Keeper, key: string, value: unknown): void {
  tryStorage(() => {
    if (value === undefined) keeper?.removeItem(key);
    else keeper?.setItem(key, JSON.stringify(value));
  });
}
