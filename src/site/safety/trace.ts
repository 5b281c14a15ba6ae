/** The log and its links as tables: from each hazard to all it names, and from each name to its hazards. */
import Papa from 'papaparse';
import { linksOf, ruleName, warnings } from '../../content/hazards.ts';
import type { Link } from '../../content/hazards.ts';
import { carePages, guides, hazards, wholeGuides } from '../../content/load.ts';
import { ownNodes, parseId } from '../../guide/ids.ts';
import { propertyIds } from '../../proof/property.ts';
import { BLOCKS } from '../../content/texts.ts';

/** What hazards name, in the order told, in words. */
export const kinds: Readonly<Record<Link['kind'], string>> = {
  pages: 'Pages',
  sentences: 'Sentences',
  rules: 'Rules of a guide',
  properties: 'Properties of the proof',
  software: 'Software',
  mutants: 'Slips in a guide',
  tests: 'Tests',
  bench: 'Measured',
};

/** A hazard's links by kind, for controls or evidence. */
export const linksBy = (links: readonly Link[], part: Link['part']) => [
  ...Map.groupBy(
    links.filter((link) => link.part === part),
    ({ kind }) => kind,
  ),
];

/** Kind → name → the hazards that name it, as a control or as evidence. */
export function backward(): ReadonlyMap<Link['kind'], ReadonlyMap<string, readonly string[]>> {
  const all = Object.entries(hazards()).flatMap(([hazard, one]) =>
    linksOf(one).map((link) => ({ ...link, hazard })),
  );
  const byKind = Map.groupBy(all, ({ kind }) => kind);
  return new Map(
    (Object.keys(kinds) as Link['kind'][]).map((kind) => [
      kind,
      new Map(
        [...Map.groupBy(byKind.get(kind) ?? [], ({ name }) => name)]
          .toSorted(([a], [b]) => (a < b ? -1 : 1))
          .map(([name, some]) => [name, [...new Set(some.map(({ hazard }) => hazard))]]),
      ),
    ]),
  );
}

/** What should have a hazard, and what of it has none: for the figures of the way back. */
export function covered(): readonly { what: string; of: number; without: readonly string[] }[] {
  const named = backward();
  const row = (what: string, kind: Link['kind'], names: Iterable<string>) => {
    const all = [...new Set(names)];
    return { what, of: all.length, without: all.filter((name) => !named.get(kind)?.has(name)) };
  };
  return [
    row('Properties of the proof', 'properties', propertyIds),
    row(
      'Pages with DANGER or WARNING, and danger stops',
      'pages',
      warnings(wholeGuides(), carePages()).keys(),
    ),
    row(
      'Rules of guides',
      'rules',
      guides().flatMap(({ rules = [] }) => rules.map(ruleName)),
    ),
  ];
}

/** Where a page that a hazard names is on this site; none where a switch took it out. */
export function addressOfPage(name: string): string | undefined {
  const [owner = '', page = ''] = name.split(':');
  if (owner === 'care') return `/care/${page}/`;
  const among = guides().filter(({ id }) => owner === BLOCKS || id === owner);
  for (const guide of among) {
    const node = ownNodes(guide).find((one) => one.page === page);
    if (node) return `/${guide.id}/${parseId(node.id).name}/`;
  }
  return undefined;
}

/** Comma-separated, lines ended by CRLF, a header first (RFC 4180). */
const csv = (rows: readonly Readonly<Record<string, string>>[]): string =>
  `${Papa.unparse([...rows], { newline: '\r\n' })}\r\n`;

/** The files beside the page. */
export const files: Readonly<Record<string, () => string>> = {
  /** A line a hazard. */
  'hazards.csv': () =>
    csv(
      Object.entries(hazards()).map(([hazard, { controls, ...one }]) => ({
        ...{ hazard, group: one.group, harm: one.harm, severity: one.severity },
        causes: one.causes.join(' '),
        sources: one.sources.join(' '),
        'outside our reach': controls['outside-our-reach'] ? 'yes' : 'no',
        residual: one.residual,
        owner: one.owner,
      })),
    ),
  /** A line a link: sorted by its first column it is one way, by its last the other. */
  'trace.csv': () =>
    csv(
      Object.entries(hazards()).flatMap(([hazard, one]) =>
        linksOf(one).map(({ part, kind, name }) => ({ hazard, part, kind, name })),
      ),
    ),
};
