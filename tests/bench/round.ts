import { loadFigures, makeRound } from '../../src/cli/round.ts';
import { loadRound } from '../../src/route/load.ts';
import { totalOf } from '../../src/route/total.ts';
import { MOST_VISITS } from '../../src/route/entries.ts';
import { damaged, publishedCodebooks, sampleCodes } from '../unit/route/support/codes.ts';
import type { Row } from './row.ts';

/** Rounds measured, each of other codes, after as many to warm up. */
const ROUNDS = 5;
const CHANCE = 0.9;

/** The largest round: read, ranked, planned, sorted, timed and stocked. */
export function benchRound(): Promise<Row[]> {
  const current = publishedCodebooks();
  const figures = loadFigures();
  const whole = (text: string) => {
    const round = makeRound(text, current, figures);
    if (!round.ok) throw new Error(JSON.stringify(round.error));
    const assessed = round.value.visits.flatMap((visit) => visit.assessed ?? []);
    return { round: round.value, total: totalOf(assessed), load: loadRound(assessed, CHANCE) };
  };
  const median = (texts: readonly string[]) => {
    for (const text of texts) whole(text);
    const times = texts.map((text) => {
      const { user, system } = process.cpuUsage();
      whole(text);
      const spent = process.cpuUsage({ user, system });
      return (spent.user + spent.system) / 1000;
    });
    return times.toSorted((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? NaN;
  };
  const rounds = Array.from({ length: ROUNDS }, (_, i) => sampleCodes(current, MOST_VISITS, i + 1));
  const spoilt = rounds.map((codes) =>
    codes.map((code, i) => (i % 10 === 0 ? damaged(code, 1, 7) : code)).join('\n'),
  );
  return Promise.resolve([
    {
      name: `round: ${String(MOST_VISITS)} visits read, ranked, planned and stocked`,
      value: median(rounds.map((codes) => codes.join('\n'))),
      unit: 'ms',
      ceiling: 300,
      note: `median of ${String(ROUNDS)} rounds of all guides, processor time`,
    },
    {
      name: 'round: the same with every tenth code damaged',
      value: median(spoilt),
      unit: 'ms',
    },
  ]);
}
