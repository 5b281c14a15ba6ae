import { expect, test } from 'vitest';
import { clock } from '../../../src/journey/wait.ts';

test('a clock shows whole seconds, rounded up, and never less than none', () => {
  expect([clock(-5), clock(0.2), clock(65), clock(3600)]).toEqual([
    '0:00',
    '0:01',
    '1:05',
    '1:00:00',
  ]);
});
