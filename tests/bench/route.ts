import { loadFigures, makeRoute } from '../../src/cli/route.ts';
import { partsToBring } from '../../src/route/parts-to-bring.ts';
import { totalOf } from '../../src/route/total.ts';
import { MOST_VISITS } from '../../src/route/entries.ts';
import { damaged, publishedCodebooks, sampleCodes } from '../unit/route/support/codes.ts';
import type { Row } from './row.ts';

/** Rounds measured, each of other codes, after as many to warm up. */
const ROUTES = 5;

/** The largest round: read, ranked, planned, sorted, timed and stocked. */
export function benchRoute(): Promise<Row[]> {
  const current = publishedCodebooks();
  const figures = loadFigures();
  const whole = (text: string) => {
    const route = makeRoute(text, current, figures);
    if (!route.ok) throw new Error(JSON.stringify(route.error));
    const assessed = route.value.visits.flatMap((visit) => visit.assessed ?? []);
    return { route: route.value, total: totalOf(assessed), load: partsToBring(assessed) };
  };
  const median = (texts: readonly string[]) => {
    for (const text of texts) whole(text);
    const times = texts.map((text) => {
      const { user, system } = process.cpuUsage();
      whole(text);
      const spent = process.cpuUsage({ user, system });
      return (spent.user + spent.system) / 1000;
    });
    return times.toSorted((a, b) => a - b)[Math.floor(ROUTES / 2)] ?? NaN;
  };
  const routes = Array.from({ length: ROUTES }, (_, i) => sampleCodes(current, MOST_VISITS, i + 1));
  const spoilt = routes.map((codes) =>
    codes.map((code, i) => (i % 10 === 0 ? damaged(code, 1, 7) : code)).join('\n'),
  );
  return Promise.resolve([
    {
      name: `round: ${String(MOST_VISITS)} visits read, ranked, planned and stocked`,
      value: median(routes.map((codes) => codes.join('\n'))),
      unit: 'ms',
      ceiling: 300,
      note: `median of ${String(ROUTES)} rounds of all guides, processor time`,
    },
    {
      name: 'round: the same with every tenth code damaged',
      value: median(spoilt),
      unit: 'ms',
    },
  ]);
}
