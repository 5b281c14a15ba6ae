import type { Guide } from '../guide/types.ts';
import { finder, guides } from '../content/load.ts';

/** The guide that comes first on every page. */
export function mainGuide(): Guide {
  const all = guides();
  const found = all.find(({ id }) => id === finder().main) ?? all[0];
  if (!found) throw new Error('content/guides holds no guide.');
  return found;
}

/** All guides as pages list them: the main one first, then in the finder's order. */
export function guidesInOrder(): readonly Guide[] {
  const named = finder().groups.flatMap(({ sayings }) => sayings.map(({ guide }) => guide));
  const order = [...new Set([finder().main, ...named])];
  const place = ({ id }: Guide): number =>
    (order.indexOf(id) + order.length + 1) % (order.length + 1);
  return guides().toSorted((a, b) => place(a) - place(b));
}

/** A saying and where its guide starts. */
export interface Saying {
  readonly id: string;
  readonly guide: Guide;
  /** What it answers behind the danger question. */
  readonly answer?: string | undefined;
}

/** The finder's groups, sayings of guides that are not there left out, and empty groups too. */
export function sayings(): readonly { readonly id: string; readonly sayings: readonly Saying[] }[] {
  return finder()
    .groups.map(({ id, sayings: all }) => ({
      id,
      sayings: all.flatMap((saying) => {
        const guide = guides().find((one) => one.id === saying.guide);
        return guide ? [{ ...saying, guide }] : [];
      }),
    }))
    .filter(({ sayings: left }) => left.length > 0);
}
