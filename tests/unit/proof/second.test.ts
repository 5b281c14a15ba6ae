// Two provers that share no code say the same of every published guide, and of guides with a slip.
import { describe, expect, it } from 'vitest';
import { missing } from '../../../.config/browsers.ts';
import { content } from '../../../src/content/load.ts';
import { check } from '../../second-proof/check.ts';
import { filesOf, first, second, sources, withSlips } from '../../second-proof/compare.ts';
import { machineOf } from '../../second-proof/machine.ts';
import { spin } from '../../second-proof/spin.ts';
import { cases } from '../../support/sample.ts';

describe.each([...content().copies()])('every guide, without $off', ({ off, guides }) => {
  it('has the same verdicts, pages and journeys in both provers', () => {
    if (!guides.ok) throw new Error('The guides do not load.');
    expect(guides.value).toHaveLength(sources.size);
    const files = filesOf(sources);
    for (const guide of guides.value) {
      const said = second(files, guide.id, off);
      expect(said, guide.id).toEqual({ ...first(guide), broken: [] });
      expect(said.pages).toBeGreaterThan(50);
      const { rules } = machineOf(files, guide.id, off);
      // With a switch off, the first prover leaves out rules about pages that are gone.
      if (off.length === 0) expect(rules).toHaveLength(guide.rules?.length ?? 0);
    }
  });
});

/** Slips each guide is given, evenly drawn from all. */
const SLIPS = cases(20, 200);

it('has the same verdicts in both with a slip in any guide', () => {
  let [compared, failing] = [0, 0];
  for (const { name, ...said } of withSlips(SLIPS)) {
    expect(said.second, name).toEqual(said.first);
    compared += 1;
    failing += said.first.broken.length > 0 ? 1 : 0;
  }
  expect(compared).toBeGreaterThan(2 * SLIPS);
  expect(failing).toBeGreaterThan(SLIPS);
});

// Where there is no SPIN it is skipped, but not where CI is set.
it.skipIf(missing('SPIN').length > 0 && process.env['CI'] === undefined)(
  'has the same states in SPIN, and no assertion fails there but in a guide with a slip',
  () => {
    const files = filesOf(sources);
    const machines = [...sources.keys()].map((id) => machineOf(files, id, []));
    const states = machines.map((machine) => check(machine).states);
    expect(spin(machines)).toEqual({ errors: 0, states: states.reduce((a, b) => a + b) });

    const source = sources.get('door-locked') ?? '';
    const hot = source.replace('heat: { to: wait }', 'heat: { to: try-door }');
    expect(hot).not.toBe(source);
    const slipped = machineOf(
      filesOf(new Map([...sources, ['door-locked', hot]])),
      'door-locked',
      [],
    );
    expect([...check(slipped).broken]).toContain('door-only-when-cool');
    expect(spin([slipped]).errors).toBe(1);
  },
);
