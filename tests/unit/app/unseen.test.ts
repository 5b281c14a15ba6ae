// A property of our own: whatever the device's clock says, no wait gets shorter by time unseen.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { NodeId } from '../../../src/guide/types.ts';
import { withoutUnseen } from '../../../src/app/desk/unseen.ts';

const node = 'wait' as NodeId;
const NOW = 1_795_600_000;
const HOUR = 3600;

it('leaves out what the clock claims and nobody saw, and what it was set back', () => {
  const timer = { node, end: NOW + 1000, counted: NOW };
  expect(withoutUnseen(timer, HOUR, NOW + 59)).toBeUndefined();
  for (const moved of [60, 900, 5 * HOUR, -60, -HOUR])
    expect(withoutUnseen(timer, HOUR, NOW + moved), String(moved)).toEqual({
      node,
      end: NOW + moved + 1000,
      counted: NOW + moved,
    });
});

it('counts nothing of a wait that does not say what is counted', () => {
  const timer = { node, end: NOW + 10 };
  expect(withoutUnseen(timer, HOUR, NOW)).toEqual({ node, end: NOW + HOUR, counted: NOW });
});

it('keeps at least what was left, and asks for nothing again once it is told', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: HOUR }),
      fc.integer({ min: -9 * HOUR, max: 9 * HOUR }),
      (left, moved) => {
        const timer = { node, end: NOW + left, counted: NOW };
        const later = withoutUnseen(timer, HOUR, NOW + moved) ?? timer;
        expect(later.end - (NOW + moved)).toBeGreaterThanOrEqual(left - 60);
        expect(withoutUnseen(later, HOUR, NOW + moved)).toBeUndefined();
      },
    ),
  );
});
