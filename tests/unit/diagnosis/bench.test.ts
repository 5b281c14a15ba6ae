import { expect, test } from 'vitest';
import { models } from '../../../src/content/load.ts';

test('a check leads to the sensor bench if, and only if, it measures what a sensor has', () => {
  const checks = Object.entries(models()).flatMap(([guide, { checks, faults }]) => {
    const withSensor = faults.filter(({ parts }) => parts.some((part) => /^sensor\b/.test(part)));
    const ids = withSensor.map(({ id }) => id);
    return checks.map((check) => ({
      name: `${guide}/${check.id}`,
      bench: check.bench === 'sensor',
      measures:
        check.reading === 'resistance' &&
        check.results.some(({ pointsTo }) => pointsTo.some((fault) => ids.includes(fault))),
    }));
  });
  const named = (key: 'bench' | 'measures') => checks.filter((one) => one[key]).map((o) => o.name);
  expect(named('measures').length).toBeGreaterThan(0);
  expect(named('bench')).toEqual(named('measures'));
});
