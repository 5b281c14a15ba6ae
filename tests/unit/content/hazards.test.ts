// The hazard log is held to what it names, and all that warns or is proved to it.
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { content } from '../../../src/content/load.ts';
import { hazardCounts } from '../../../src/content/hazards.ts';
import { copyOfContent, spoil, toldBy } from './copy.ts';

const FILE = 'hazards.yaml';
let copy = copyOfContent();
beforeEach(() => {
  copy = copyOfContent();
});
afterEach(() => {
  copy.done();
});

/** A slip of the log, and the line it begins in. */
const slip = (from: string, to: string): number => spoil(copy.folder, FILE, from, to);

describe('the hazard log', () => {
  it('has 60 hazards or more, each with a control or said to have none', () => {
    const log = content().hazards();
    if (!log.ok) throw new Error('no log');
    const counts = hazardCounts(log.value);
    expect(counts.hazards).toBeGreaterThanOrEqual(60);
    expect(counts.controls).toBeGreaterThan(counts.hazards);
    expect(counts.evidence).toBeGreaterThan(counts.hazards);
    expect(counts.outside).toBeGreaterThan(0);
  });

  it('is told where a hazard has no control, or no evidence', () => {
    const open = slip(
      '  controls: { outside-our-reach: true }\n  residual: Nothing here',
      '  controls: {}\n  residual: Nothing here',
    );
    const unshown = slip(
      '  evidence:\n    { tests: { vectors/note.test.ts: [means what it meant, has',
      '  # evidence:\n  #  { tests: { vectors/note.test.ts: [means what it meant, has',
    );
    const told = toldBy('hazards', copy.folder);
    expect(told).toHaveLength(2);
    const at = (line: number): string => `${join(copy.folder, FILE)}:${String(line)}:1: The hazard`;
    expect(told[0]).toContain(`${at(open - 6)} "emergency-call-fails" has no controls.`);
    expect(told[1]).toContain(`${at(unshown - 7)} "old-code-new-meaning" has no evidence.`);
  });

  it('is told where it names what is not there, at its line', () => {
    const slips: readonly (readonly [from: string, to: string, among: string])[] = [
      ['[cpsc-tip, practice]', '[no-such-source, practice]', 'sources.json'],
      ['blocks:stop-gas-supply', 'blocks:no-such-page', 'the pages of guides or care.yaml'],
      ['preview:flags.leans, care:', 'preview:flags.no-such, care:', 'the English sentences'],
      ['ends-at what.rocks', 'ends-at no-such.rocks', 'the rules of guides'],
      ['[unsure-is-no-alarm]', '[no-such-property]', 'the properties of the proof'],
      ['src/note/retired.ts', 'src/note/no-such.ts', 'the project'],
      ['bench: [note]', 'bench: [no-such]', 'tests/bench'],
      ['[change how urgent, retarget', '[no such slip, retarget', 'tests/mutants/mutants.ts'],
      ['[raises no flag]', '[raises no such flag]', 'tests/unit/proof/ends.test.ts'],
      [
        '[the least distance is seven]',
        '[no such distance]',
        'tests/unit/note/reed-solomon.test.ts',
      ],
    ];
    const places = slips.map(([from, to, among]) => [slip(from, to), among] as const);
    const told = toldBy('hazards', copy.folder);
    for (const [line, among] of places)
      expect(told).toContainEqual(
        expect.stringMatching(
          new RegExp(`${FILE}:${String(line)}:\\d+: "[^"]+" is not in ${among}\\.`),
        ),
      );
    // What it named before is without a hazard now: a page and a property.
    expect(told).toHaveLength(slips.length + 2);
  });

  it('is asked for whatever warns of death or serious injury, and for every property', () => {
    slip('[blocks:stop-gas-supply, ', '[');
    slip('[wrong-temperature:stop-level, care:anti-tip]', '[wrong-temperature:stop-level]');
    slip('[unsure-is-no-alarm]', '[sentences-plain]');
    // A hazard of lesser harm is no answer to such a page.
    slip(
      'overvoltage starts a fire.\n  group: Shock and power\n  causes: [homeowner]\n  severity: death',
      'overvoltage starts a fire.\n  group: Shock and power\n  causes: [homeowner]\n  severity: minor',
    );
    const told = toldBy('hazards', copy.folder).join('\n');
    expect(told).toMatch(/blocks\/endings\.yaml:\d+:3: No hazard .* blocks:stop-gas-supply,/);
    expect(told).toMatch(/care\.yaml:\d+:\d+: No hazard .* care:anti-tip,/);
    expect(told).toMatch(/hazards\.yaml:1:1: No hazard names unsure-is-no-alarm,/);
    expect(told).toMatch(/blocks\/endings\.yaml:\d+:3: No hazard .* blocks:stop-half-power,/);
    expect(told.match(/No hazard/g)).toHaveLength(4);
  });

  it('is asked for a danger stop, too', () => {
    slip('[blocks:stop-trapped]', '[blocks:stop-burn]');
    expect(toldBy('hazards', copy.folder)).toEqual([
      expect.stringMatching(/blocks\/danger\.yaml:\d+:3: No hazard .* blocks:stop-trapped,/),
    ]);
  });
});
