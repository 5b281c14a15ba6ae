import { describe, expect, test } from 'vitest';
import { driftFromMiss } from '../../../src/physics/oven-miss.ts';
import { toCelsius } from '../../../src/physics/temperature.ts';

/**
 * IEC 60751, table of a 100 Ω platinum sensor, °C → Ω, to three decimals. Set to the first
 * temperature and truly at the second, the sensor reads the first's resistance where the
 * table gives the second's: the drift is the difference of two entries of the table.
 */
const table = new Map([
  [100, 138.506],
  [200, 175.856],
  [250, 194.098],
  [300, 212.052],
]);

/** The same, 1000 Ω by the standard's equation, °F → Ω (computed apart, to two decimals). */
const pt1000 = new Map([
  [200, 1359.74],
  [300, 1569.1],
  [500, 1977.12],
]);

function pairs(entries: ReadonlyMap<number, number>) {
  const all = [...entries];
  return all.flatMap(([set, atSet]) =>
    all.map(([oven, atOven]) => ({ set, oven, ohms: atSet - atOven })),
  );
}

const exactly = (value: number) => ({ low: value, high: value });

describe('the drift behind an oven’s miss, from published resistances', () => {
  test.each(pairs(table))('set $set °C, truly $oven °C', ({ set, oven, ohms }) => {
    const drift = driftFromMiss({ set: exactly(set), miss: exactly(oven - set), r0: 100 });
    if (!drift.ok) throw new Error(drift.error.code);
    // Two entries, each rounded to 0.001 Ω.
    expect(Math.abs(drift.value.ohms.low - ohms)).toBeLessThanOrEqual(0.001 + 1e-9);
    expect(drift.value.ohms.high).toBe(drift.value.ohms.low);
    expect(drift.value.kelvins.low).toBeCloseTo(set - oven, 9);
  });

  test.each(pairs(pt1000))('set $set °F, truly $oven °F, 1000 Ω', ({ set, oven, ohms }) => {
    const miss = toCelsius(oven) - toCelsius(set);
    const drift = driftFromMiss({ set: exactly(toCelsius(set)), miss: exactly(miss), r0: 1000 });
    if (!drift.ok) throw new Error(drift.error.code);
    expect(Math.abs(drift.value.ohms.low - ohms)).toBeLessThanOrEqual(0.01 + 1e-9);
  });
});
