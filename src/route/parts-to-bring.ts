/** What to load for a whole route, beside what the habit would load. */
import { stockFor, tails } from '../diagnosis/demand.ts';
import { coversAtLeast, routeDemand, routeStock } from './stock.ts';
import type { PartId } from '../diagnosis/types.ts';
import type { Assessed } from '../visit/assess.ts';

/** A part is likely for a visit from this chance on, where words call a fault possible. */
export const LIKELY = 0.1;
/** A needed count's mean below this is left out of the table: one in ten thousand routes. */
const NEVER = 1e-4;

export interface PartLoad {
  readonly part: PartId;
  /** How many the route needs on the average. */
  readonly mean: number;
  /** The fewest that are enough of this part alone with the chosen chance, and their chance. */
  readonly alone: number;
  readonly chance: number;
  /** As many as the smallest stock that is enough of all parts together has. */
  readonly together: number;
  /** One for each visit for which it is likely. */
  readonly habit: number;
}

/** A way to load: pieces in all, and the least chance that nothing is short anywhere. */
export interface Loaded {
  readonly pieces: number;
  /** A bound (Boole's inequality), not the chance itself, which is this or more. */
  readonly chanceAtLeast: number;
}

export interface PartsToBring {
  /** What was asked for. */
  readonly chance: number;
  /** The part needed most first. */
  readonly parts: readonly PartLoad[];
  readonly alone: Loaded;
  readonly together: Loaded;
  readonly habit: Loaded;
}

/** The load of a route with a chosen chance in (0, 1). */
export function partsToBring(visits: readonly Assessed[], chance: number): PartsToBring {
  const demand = routeDemand(visits);
  const { stock, chanceAtLeast } = routeStock(demand, chance);
  const together = new Map(stock.map(({ part, count }) => [part, count]));
  const habit = new Map<PartId, number>();
  for (const { parts } of visits)
    for (const { part, chance: needed } of parts)
      if (needed >= LIKELY) habit.set(part, (habit.get(part) ?? 0) + 1);
  const rows = [...demand].map(([part, pmf]): PartLoad => {
    const alone = stockFor(pmf, chance);
    return {
      part,
      mean: pmf.reduce((mean, one, count) => mean + count * one, 0),
      alone,
      chance: 1 - (tails(pmf)[alone] ?? 0),
      together: together.get(part) ?? 0,
      habit: habit.get(part) ?? 0,
    };
  });
  const pieces = (of: 'alone' | 'together' | 'habit') =>
    rows.reduce((all, row) => all + row[of], 0);
  const alone = new Map(rows.map((row) => [row.part, row.alone]));
  return {
    chance,
    parts: rows
      .filter((row) => row.mean > NEVER || row.together > 0 || row.habit > 0)
      .sort((a, b) => b.mean - a.mean),
    alone: { pieces: pieces('alone'), chanceAtLeast: coversAtLeast(demand, alone) },
    together: { pieces: pieces('together'), chanceAtLeast },
    habit: { pieces: pieces('habit'), chanceAtLeast: coversAtLeast(demand, habit) },
  };
}
