import { qualify } from '../guide/ids.ts';
import type { Journey } from '../guide/types.ts';

/**
 * How long ago the heat stopped, for a page with a wait, which does not know its guide: minutes, at
 * least; undefined where no answer tells. What `trace` says of the same journey.
 *
 * @param told the answers after which it is known, or known no longer, as `heatTold` of `src/site`
 *   puts them on the page: `guide/node.answer=minutes`, joined by spaces. The last one given counts
 * @param first the guide the journey began in
 */
export function heatEndedAs(told: string, first: string, journey: Journey): number | undefined {
  const known = new Map(told.split(' ').map((one) => one.split('=') as [string, string]));
  const minutes = journey
    .map(({ at, answer }) => known.get(`${qualify(first, at)}.${answer}`))
    .filter((one) => one !== undefined)
    .at(-1);
  return minutes ? Number(minutes) : undefined;
}
