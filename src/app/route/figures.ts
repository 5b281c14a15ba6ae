import { createMemo, type Accessor } from 'solid-js';
import type { Assessed } from '../../visit/assess.ts';
import type { Listed } from './state.ts';

const same = (a: readonly Assessed[], b: readonly Assessed[]): boolean =>
  a.length === b.length && a.every((one, index) => one === b[index]);

/** The figures of the visits, in an order that moving a visit does not change: nothing is worked out anew. */
export function createFigures(visits: Accessor<readonly Listed[]>): Accessor<readonly Assessed[]> {
  return createMemo(
    () =>
      visits()
        .toSorted((a, b) => a.id - b.id)
        .flatMap(({ assessed }) => assessed ?? []),
    [],
    { equals: same },
  );
}
