import { expect, test } from 'vitest';
import { dayBar } from '../../../src/route/day-bar.ts';

test('visits follow one another, none before its window, and what comes after it is late', () => {
  const bar = dayBar([
    { window: { from: 480, to: 600 }, expected: 30, cautious: 70 },
    { window: undefined },
    { window: { from: 780, to: 900 }, expected: 130, cautious: 150 },
    { window: { from: 840, to: 900 }, expected: 20, cautious: 20 },
  ]);
  expect(bar.map(({ from, to, cautious }) => [from, to, cautious])).toEqual([
    [480, 510, 550],
    [510, 525, 525],
    [780, 910, 930],
    [910, 930, 930],
  ]);
  expect(bar.map(({ late }) => late)).toEqual([false, false, false, true]);
  expect(dayBar([{ window: undefined }])).toMatchObject([{ from: 480, late: false }]);
  expect(dayBar([])).toEqual([]);
});
