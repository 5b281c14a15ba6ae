/** A newer release may have no page any more that a journey on this device leads to. */
import { hashOf, parseRaw } from '../../address/grammar.ts';
import { formatJourney, parseJourney } from '../../address/journey-text.ts';
import { qualify } from '../../guide/ids.ts';

/** Where a journey can go on: its page, then the questions answered before, the last one first. */
export function waysBack(address: string): readonly string[] {
  const url = new URL(address);
  const values = parseRaw(url.hash);
  const journey = parseJourney(values.j);
  const { g = url.pathname.split('/').at(-3) ?? '' } = values;
  const before = journey.map(({ at }, index) => {
    const j = formatJourney(journey.slice(0, index));
    const hash = hashOf({ ...values, a: '', w: '', g, j });
    return new URL(`../../${qualify(g, at)}/${hash}`, url).href;
  });
  return [address, ...before.toReversed()];
}

/**
 * The first of the ways back that is there; undefined where the site has none of them. Where nothing
 * answers, nothing is known: then the address itself.
 */
export async function lastThere(address: string): Promise<string | undefined> {
  let answered = false;
  for (const way of waysBack(address)) {
    const response = await fetch(way).catch(() => undefined);
    if (response?.ok) return way;
    answered ||= response !== undefined;
  }
  return answered ? undefined : address;
}
