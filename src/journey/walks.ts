/** What a page needs to know to follow a journey to it from its guide's start, without the guides. */
export interface Walks {
  /** Guide → its first page. */
  readonly starts: Readonly<Record<string, string>>;
  /** The page first. Page → pages it leads to, each with the answers that do, joined by spaces; only what lies on some way to the page. */
  readonly edges: Readonly<Record<string, Readonly<Record<string, string>> | undefined>>;
}

/**
 * Whether a journey leads to a page answer by answer. What no way to the page has is no way there.
 * @param here the page, `guide/node`
 * @param first the guide the journey began in
 * @param journey as in the address: `node.answer` joined by `~`
 */
export function leadsTo(
  { starts, edges }: Walks,
  here: string,
  first: string,
  journey: string,
): boolean {
  let page: string | undefined = starts[first];
  for (const given of journey.split('~')) {
    const [at = '', answer = ''] = given.split('.');
    if (page === undefined || (at.includes('/') ? at : `${first}/${at}`) !== page) return false;
    const to = edges[page] ?? {};
    page = Object.keys(to).find((next) => to[next]?.split(' ').includes(answer));
  }
  return page === here;
}
