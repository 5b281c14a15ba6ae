/**
 * A quick tap may come before the page's script has run. The link then names only the answer
 * (`a`), and the journey up to it is the one that this tab kept when the last page was left.
 */
import { parseRaw, type RawFragment } from '../../address/grammar.ts';
import { formatJourney, parseJourney } from '../../address/journey-text.ts';
import { parseId, qualify } from '../../guide/ids.ts';
import type { NodeId } from '../../guide/types.ts';
import { savedFor } from './saved.ts';

/**
 * The fragment of a page that was reached by an early tap, the journey put in; undefined where
 * the kept copy is not that of the page the tap was made on.
 * @param own the page's guide
 * @param arrivals the answers that lead to the page
 */
export function caughtUp(
  values: RawFragment,
  own: string,
  arrivals: ReadonlySet<string>,
): RawFragment | undefined {
  const [tap] = parseJourney(values.a);
  if (values.j !== undefined || !tap || !arrivals.has(formatJourney([tap]))) return undefined;
  const before = new URL(`../../${qualify(own, tap.at)}/`, location.href);
  const kept = savedFor(before.pathname, 'sessionStorage');
  if (!kept) return undefined;
  const caught = parseRaw(kept.hash);
  const { guide = own, name } = parseId(tap.at);
  const first = caught.g ?? guide;
  const at = (first === guide ? name : `${guide}/${name}`) as NodeId;
  const journey = [...parseJourney(caught.j), { at, answer: tap.answer }];
  return { ...caught, w: '', g: first, j: formatJourney(journey) };
}
