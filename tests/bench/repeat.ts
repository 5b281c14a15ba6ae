/** The middle of some measurements; NaN of none. */
export function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

/** Measures one after the other, never two at once. */
export async function times<T>(count: number, measure: () => Promise<T>): Promise<T[]> {
  const all: T[] = [];
  for (let run = 0; run < count; run += 1) all.push(await measure());
  return all;
}
