// Held against a simulation that knows the true time, which no page does: the device's clock is the
// true time and an error that a person may change; the monotonic clock (High Resolution Time,
// section 4) runs on through that, and stands still while the device sleeps.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatTimer, parseTimer, waitOf } from '../../../src/address/timer.ts';
import type { NodeId } from '../../../src/guide/types.ts';
import {
  begin,
  count,
  countAbsence,
  gap,
  isSetBack,
  leaveOut,
  left,
  pass,
  type Wait,
} from '../../../src/journey/wait.ts';

const node = 'wait' as NodeId;
const LENGTH = 4 * 3600;
const START = 1_795_600_000;

type Event =
  | { readonly kind: 'watch' | 'sleep' | 'away'; readonly seconds: number }
  | { readonly kind: 'set'; readonly by: number }
  | { readonly kind: 'answer'; readonly sure: boolean };

interface Found {
  readonly left: number;
  readonly truth: number;
  readonly asked: boolean;
  /** Seconds by which the clock was set forward, in all. */
  readonly forward: number;
}

/** A device with a count-down, and what is really left of its wait. */
function simulate(events: readonly Event[]): Found {
  let truth = 0;
  let error = 0;
  let forward = 0;
  /** True time that passed and is not counted: what a reader who is asked goes by. */
  let unseen = 0;
  const clock = () => START + truth + error;
  let wait: Wait = begin(clock(), LENGTH);
  for (const event of events) {
    if (event.kind === 'set') {
      error += event.by;
      forward += Math.max(0, event.by);
    } else if (event.kind === 'answer') {
      const claimed = gap(wait, clock());
      if (claimed > 0) {
        const yes = event.sure && claimed <= unseen;
        wait = yes ? count(wait, clock()) : leaveOut(wait, clock());
        // A refused gap stays refused: later questions are about later time.
        unseen = 0;
      }
    } else {
      truth += event.seconds;
      if (event.kind === 'watch') wait = pass(wait, event.seconds);
      else unseen += event.seconds;
      if (event.kind === 'away') {
        const address = parseTimer(formatTimer({ node, ...wait }));
        const kept = waitOf(address, node, LENGTH, clock());
        if (!kept) throw new Error('what was written is read');
        wait = kept;
      }
    }
    if (isSetBack(wait, clock())) wait = leaveOut(wait, clock());
    else if (event.kind === 'away') {
      const counted = countAbsence(wait, clock(), LENGTH);
      if (counted !== wait) unseen = 0;
      wait = counted;
    }
  }
  return { left: left(wait), truth: LENGTH - truth, asked: gap(wait, clock()) > 0, forward };
}

const seconds = fc.integer({ min: 0, max: LENGTH });
const spent = fc.record({ kind: fc.constantFrom('watch', 'sleep', 'away'), seconds } as const);
const answered = fc.record({ kind: fc.constant('answer'), sure: fc.boolean() } as const);
const set = fc.record({
  kind: fc.constant('set'),
  by: fc.integer({ min: -10 * LENGTH, max: 10 * LENGTH }),
} as const);
const run = { numRuns: 3000, seed: 20261126 };

describe('a wait', () => {
  it('never ends before its time, whatever sleeps or closes, by more than clocks were set forward', () => {
    let early = 0;
    fc.assert(
      fc.property(fc.array(fc.oneof(spent, answered, set), { maxLength: 20 }), (events) => {
        const found = simulate(events);
        if (found.left <= 0) early += 1;
        expect(found.left).toBeGreaterThanOrEqual(found.truth - found.forward);
      }),
      run,
    );
    expect(early, 'waits that ended at all').toBeGreaterThan(100);
  });

  it('always ends once the page has been watched as long as it lasts', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(spent, answered, set), { maxLength: 20 }), (events) => {
        // Each reload may round up to the next whole second at both ends.
        const rounded = 2 * events.filter(({ kind }) => kind === 'away').length;
        const watched = { kind: 'watch', seconds: LENGTH + rounded } as const;
        expect(simulate([...events, watched]).left).toBeLessThanOrEqual(0);
      }),
      run,
    );
  });

  it('is right to a minute where the clock is let be and the reader says what passed', () => {
    fc.assert(
      fc.property(fc.array(spent, { maxLength: 20 }), (events) => {
        const found = simulate([...events, { kind: 'answer', sure: true }]);
        expect(found.asked).toBe(false);
        const off = found.left - found.truth;
        expect(found.truth > 0 ? off : 0).toBeLessThanOrEqual(60 + 2 * events.length);
      }),
      run,
    );
  });

  it('counts an absence of up to the slowest wait at once, and no longer one', () => {
    const wait = pass(begin(START, 3 * 3600), 100);
    const after = (seconds: number) => countAbsence(wait, wait.counted + seconds, LENGTH);
    expect(after(59)).toBe(wait);
    expect(left(after(3600))).toBe(left(wait) - 3600);
    expect(left(after(LENGTH))).toBeLessThan(0);
    expect(after(LENGTH + 1)).toBe(wait);
    expect(after(-3600)).toBe(wait);
  });

  it('asks about no gap of less than a minute, and about none once it is over', () => {
    const wait = pass(begin(START, 600), 100);
    expect(gap(wait, START + 100 + 59)).toBe(0);
    expect(gap(wait, START + 100 + 60)).toBe(60);
    expect(gap(pass(wait, 500), START + 100_000)).toBe(0);
  });

  it('sees a clock that was set back by a minute or more', () => {
    const wait = pass(begin(START, 600), 100);
    const back = (seconds: number) => isSetBack(wait, wait.counted - seconds);
    expect([back(60), back(59), back(-60)]).toEqual([true, false, false]);
  });
});
