import type { Entries, Entry } from './entries.ts';

/**
 * The columns of several lists as one: a heading that was there is the same column, a new one comes
 * last. Where a list has a heading twice, its second goes with the second there was.
 */
export function withEntries(
  columns: readonly string[],
  { columns: found, entries }: Entries,
): { readonly columns: readonly string[]; readonly entries: readonly Entry[] } {
  const all = [...columns];
  const places: number[] = [];
  for (const name of found) {
    const known = all.findIndex((one, index) => one === name && !places.includes(index));
    places.push(known < 0 ? all.push(name) - 1 : known);
  }
  const placed = (others: readonly string[]): string[] => {
    const cells = all.map(() => '');
    for (const [index, place] of places.entries()) cells[place] = others[index] ?? '';
    return cells;
  };
  return { columns: all, entries: entries.map((one) => ({ ...one, others: placed(one.others) })) };
}
