/** What a page needs to know to follow a journey to it from its guide's start, without the guides. */
export interface Walks {
  /** Guide → its first page. */
  readonly starts: Readonly<Record<string, string>>;
  /** Page → answer → page, for all that lie on some way to the page; all as `guide/node`. */
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
    page = edges[page]?.[answer];
  }
  return page === here;
}
