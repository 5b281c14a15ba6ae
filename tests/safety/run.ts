// npm run safety: both provers on every guide, on copies with a slip and in SPIN, written down for the
// safety case (content/safety.json). The build makes the pages of it.
import { execFileSync } from 'node:child_process';
import { missing, spinProgram } from '../../.config/browsers.ts';
import { guides, structureOf, study } from '../../src/content/load.ts';
import { mutationScores } from '../mutants/published.ts';
import { check } from '../second-proof/check.ts';
import { filesOf, first, second, sources, withSlips } from '../second-proof/compare.ts';
import { machineOf } from '../second-proof/machine.ts';
import { spin } from '../second-proof/spin.ts';
import { rehearse } from './rehearsal.ts';
import { today, write } from './results.ts';

/** Copies a guide that both provers judge, and of each kind of slip for the proof's score. */
const SLIPS = 200;
/** Sessions of each made-up reader with each task. */
const SESSIONS = 1_000;

const same = (one: unknown, other: unknown): boolean => {
  const text = (value: unknown): string =>
    JSON.stringify(value, (_, inner: unknown) =>
      typeof inner === 'bigint' ? String(inner) : inner,
    );
  return text(one) === text(other);
};

const files = filesOf(sources);
const machines = guides().map(({ id }) => machineOf(files, id, []));
const proved = guides().map((guide, index) => {
  const said = first(guide);
  const machine = machines[index];
  if (!machine || !said.journeys) throw new Error(`${guide.id} has journeys without an end.`);
  const other = second(files, guide.id);
  return [
    guide.id,
    {
      structure: structureOf(guide),
      pages: said.pages,
      journeys: String(said.journeys.all),
      longest: said.journeys.longest ?? 0,
      states: check(machine).states,
      equal: said.broken.length === 0 && same(said, other),
    },
  ] as const;
});
const slips = { compared: 0, failing: 0, unequal: 0 };
for (const { first: one, second: other } of withSlips(SLIPS)) {
  slips.compared += 1;
  slips.failing += one.broken.length > 0 ? 1 : 0;
  slips.unequal += same(one, other) ? 0 : 1;
}
const lacking = missing('SPIN').length > 0;
/** The first number it tells of itself: "Spin Version 6.5.2 -- 6 December 2019". */
const spinVersion = (): string =>
  /\d[\d.]*/.exec(execFileSync(spinProgram(), ['-V'], { encoding: 'utf8' }))?.[0] ?? '';
const programs: Record<string, string> = lacking ? {} : { SPIN: spinVersion() };
const provers = {
  ...today(programs),
  guides: Object.fromEntries(proved),
  ...(lacking ? {} : { spin: spin(machines) }),
  slips,
};
const scores = [...mutationScores(SLIPS)].map(
  ({ guide, score: { mutants, refused, unsafe, caught, strict } }) =>
    [guide, { mutants, refused, unsafe, caught, strict }] as const,
);
await write({
  provers,
  slips: { ...today({}), guides: Object.fromEntries(scores) },
  rehearsal: { ...today({}), people: rehearse(guides(), study(), SESSIONS) },
});
const all = proved.every(([, { equal }]) => equal) && slips.unequal === 0;
const missed = scores.reduce((sum, [, { unsafe, caught }]) => sum + unsafe - caught, 0);
console.log(
  `${String(proved.length)} guides and ${String(slips.compared)} copies with a slip: both provers ${all ? 'say the same' : 'DIFFER'}; ` +
    `${String(missed)} unsafe slips not caught${lacking ? '; SPIN was not found' : ''}.`,
);
process.exitCode = all && missed === 0 ? 0 : 1;
