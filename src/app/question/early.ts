/**
 * A quick tap may come before the page's script has run. The link then names only the answer
 * (`a`), and the journey up to it is the one that was kept when the last page was left.
 */
import { split, whole } from '../../guide/ids.ts';
import { formatJourney, parseJourney } from '../../address/journey-text.ts';
import type { AnswerId, NodeId } from '../../guide/types.ts';
import { KEPT } from '../shared/kept-journey.ts';
import { tryStorage } from '../shared/storage.ts';

/**
 * The fragment of a page that was reached by an early tap, the journey put in; undefined where
 * the kept copy is not that of the page the tap was made on.
 * @param own the page's guide
 * @param arrivals the answers that lead to the page
 */
export function caughtUp(
  values: URLSearchParams,
  own: string,
  arrivals: ReadonlySet<string>,
): URLSearchParams | undefined {
  const given = values.get('a') ?? '';
  if (values.has('j') || !arrivals.has(given)) return undefined;
  const [from = '', answer = ''] = given.split('.');
  const kept = tryStorage(() => new URL(localStorage.getItem(KEPT) ?? '', location.href));
  if (!kept) return undefined;
  const before = new URL(`../../${whole(own, from)}/`, location.href);
  const caught = new URLSearchParams(kept.hash.slice(1));
  const journey = parseJourney(caught.get('j') ?? '');
  if (kept.pathname !== before.pathname || journey.length === 0) return undefined;
  const { guide = own, name } = split(from);
  const first = caught.get('g') ?? guide;
  const at = (first === guide ? name : `${guide}/${name}`) as NodeId;
  caught.delete('w');
  caught.set('g', first);
  caught.set('j', formatJourney([...journey, { at, answer: answer as AnswerId }]));
  return caught;
}
