import { expect, test } from 'vitest';
import { clock, waitMinutes } from '../../../src/journey/countdown.ts';

test('a wait that starts now is never told too short', () => {
  expect(waitMinutes('fixed', 5, 'since.over-4')).toBe(5);
  expect(waitMinutes('cooling', 240, 'danger.none')).toBe(240);
  expect(waitMinutes('cooling', 240, 'danger.none~since.1-to-4')).toBe(180);
  expect(waitMinutes('cooling', 240, 'danger.none~since.over-4')).toBe(15);
  expect(waitMinutes('cooling', 240, 'since.over-4~short-clean.ended')).toBe(240);
});

test('a clock shows whole seconds, rounded up, and never less than none', () => {
  expect([clock(-5), clock(0.2), clock(65), clock(3600)]).toEqual([
    '0:00',
    '0:01',
    '1:05',
    '1:00:00',
  ]);
});
