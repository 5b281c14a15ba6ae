// Two provers that share no code say the same of every published guide, and of guides with a slip.
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { missing } from '../../../.config/browsers.ts';
import { content } from '../../../src/content/load.ts';
import { joinGuides } from '../../../src/guide/join.ts';
import { loadPart } from '../../../src/guide/load.ts';
import type { GuideSource } from '../../../src/guide/join.ts';
import type { Guide } from '../../../src/guide/types.ts';
import { prove } from '../../../src/proof/prove.ts';
import { mutantsOf } from '../../mutants/mutants.ts';
import { check } from '../../second-proof/check.ts';
import { machineOf, readFiles } from '../../second-proof/machine.ts';
import type { Files } from '../../second-proof/machine.ts';
import { spin } from '../../second-proof/spin.ts';
import { cases } from '../../support/sample.ts';

const read = (path: string): string => readFileSync(join(content().root, path), 'utf8');
const namesIn = (folder: string): string[] => readdirSync(join(content().root, folder));
const blocks = namesIn('blocks').map((file): [string, string] => [
  file.replace('.yaml', ''),
  read(`blocks/${file}`),
]);
const sources = new Map(namesIn('guides').map((id) => [id, read(`guides/${id}/graph.yaml`)]));
const filesOf = (texts: ReadonlyMap<string, string>): Files => readFiles(texts.values(), blocks);

/** What the first prover says without a sentence: properties that fail, pages and journeys. */
function first(guide: Guide) {
  const { verdicts, journeys } = prove(guide);
  const { all, complete, longest } = journeys;
  const broken = verdicts.filter(({ holds }) => !holds).map(({ id }) => id);
  const endless = all === null ? null : { all, complete, longest };
  return { broken: broken.toSorted(), pages: guide.nodes.size, journeys: endless };
}

function second(files: Files, id: string, off: readonly string[] = []) {
  const machine = machineOf(files, id, off);
  const { broken, journeys } = check(machine);
  return { broken: [...broken].toSorted(), pages: machine.places.length, journeys };
}

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
  const known = content().blocks();
  if (!known.ok) throw new Error('The blocks do not load.');
  const partOf = (source: string): GuideSource[] => {
    const part = loadPart(source, 'graph.yaml', known.value);
    return part.ok ? [part.value] : [];
  };
  const parts = [...sources.values()].flatMap(partOf);
  const files = filesOf(sources);
  let [compared, failing] = [0, 0];
  for (const [id, source] of sources) {
    const all = mutantsOf(source);
    const others = parts.filter(({ guide }) => String(guide.id) !== id);
    for (let nth = 0; nth < SLIPS; nth += 1) {
      const mutant = all[Math.floor((nth * all.length) / SLIPS)];
      const text = mutant?.source() ?? '';
      const loaded = joinGuides([...partOf(text), ...others]);
      const guide = loaded.ok ? loaded.value.find((one) => String(one.id) === id) : undefined;
      // What does not even load is nobody's to prove.
      if (!guide) continue;
      const said = first(guide);
      const guides = new Map([...files.guides, ...readFiles([text], []).guides]);
      expect(second({ ...files, guides }, id), mutant?.name).toEqual(said);
      compared += 1;
      failing += said.broken.length > 0 ? 1 : 0;
    }
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
