import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { loadModel } from '../../../src/diagnosis/load.ts';
import type { ModelProblemCode } from '../../../src/diagnosis/problem.ts';
import type { CheckFile, ModelFile } from '../../../src/diagnosis/schema.ts';
import { realFile } from './support/logs.ts';
import { realContext, realFiles, realModel } from './support/real.ts';

/** The authors' form, open to change. */
type Open<T> = { -readonly [K in keyof T]: Open<T[K]> };
type File = Open<ModelFile>;

const context = realContext();
const NEAR = 'door-locked/near';
const checkOf = (file: File, name: string) => file.checks[name] as Open<CheckFile>;
const tableOf = (file: File, name: string) => {
  const table = file.observations[name];
  if (!table) throw new Error(`no table ${name}`);
  return table;
};
const rowOf = (file: File, name: string) => {
  const [row] = tableOf(file, name).rows;
  if (!row) throw new Error(`no row in ${name}`);
  return row;
};
const faultOf = (file: File, name: string) => {
  const fault = file.faults[name];
  if (!fault) throw new Error(`no fault ${name}`);
  return fault;
};

/** One slip for every problem there is, by what it does to the published figures. */
const slips: Record<
  Exclude<ModelProblemCode, 'not-yaml'>,
  { readonly path: string; readonly slip: (file: File) => void }
> = {
  'wrong-shape': {
    path: 'faults.sensor.prior',
    slip: (file) => (faultOf(file, 'sensor').prior = 0),
  },
  'unknown-fault': {
    path: 'observations.listen.rows.0.faults.0',
    slip: (file) => rowOf(file, 'listen').faults?.splice(0, 1, 'gremlin'),
  },
  'unknown-part': {
    path: 'faults.sensor.parts.0',
    slip: (file) => (faultOf(file, 'sensor').parts = ['flux']),
  },
  'unknown-access': {
    path: 'checks.fan.access.0',
    slip: (file) => (checkOf(file, 'fan').access = ['roof-off']),
  },
  'unknown-check': {
    path: 'checks.latch-drive.after.1',
    slip: (file) => (checkOf(file, 'latch-drive').after = ['latch-motor', 'prayer']),
  },
  'unknown-evidence': {
    path: 'observations.weather',
    slip: (file) => (file.observations['weather'] = tableOf(file, 'forced')),
  },
  'unknown-answer': {
    path: 'observations.door-locked/near.answers.0',
    slip: (file) => (tableOf(file, NEAR).answers[0] = 'tepid'),
  },
  'unsure-is-no-evidence': {
    path: 'observations.door-locked/near.answers.0',
    slip: (file) => (tableOf(file, NEAR).answers[0] = 'unsure'),
  },
  twice: {
    path: 'checks.fan.access.2',
    slip: (file) => checkOf(file, 'fan').access.push('supply-off'),
  },
  'priors-do-not-sum-to-one': {
    path: 'faults',
    slip: (file) => (faultOf(file, 'sensor').prior = 0.06),
  },
  'row-does-not-sum-to-one': {
    path: 'observations.door-locked/near.default.p',
    slip: (file) => (tableOf(file, NEAR).default.p = [0.3, 0.5, 0.1]),
  },
  'row-length': {
    path: 'observations.door-locked/near.default.p',
    slip: (file) => (tableOf(file, NEAR).default.p = [0.3, 0.5, 0.1, 0.1]),
  },
  'unknown-fact': {
    path: 'observations.listen.rows.0',
    slip: (file) => (rowOf(file, 'listen').if = { weather: ['fair'] }),
  },
  'unknown-value': {
    path: 'observations.listen.rows.0',
    slip: (file) => (rowOf(file, 'listen').if = { fuel: ['wood'] }),
  },
  'unknown-guide': {
    path: 'faults.sensor.calls.0',
    slip: (file) => (faultOf(file, 'sensor').calls = { 'no-such-guide': 1 }),
  },
  'is-about-nothing': {
    path: 'observations.listen.rows.0.is',
    slip: (file) => (rowOf(file, 'listen').is = ['gas']),
  },
  'row-of-nothing': {
    path: 'observations.listen.rows.0',
    slip: (file) => delete rowOf(file, 'listen').faults,
  },
  'not-one-clear-result': {
    path: 'checks.fan.results',
    slip: (file) => (checkOf(file, 'fan').results['seized'] = []),
  },
  'no-room-for-clear-result': {
    path: 'checks.latch-look.catches',
    slip: (file) => (checkOf(file, 'latch-look')['false-alarms'] = 0.999),
  },
  'fault-without-check': {
    path: 'faults.drawer-things',
    slip: (file) => (checkOf(file, 'drawer-look').results['melted-or-burnt'] = ['sensor']),
  },
  'unsafe-reading': {
    path: 'checks.latch-motor.reading',
    slip: (file) => (checkOf(file, 'latch-motor')['wires-off'] = false),
  },
  'checks-in-a-circle': {
    path: 'checks.latch-motor.after',
    slip: (file) => (checkOf(file, 'latch-motor').after = ['latch-drive']),
  },
  'order-breaks-after': {
    path: 'checks.latch-drive.after',
    slip: (file) => {
      const { 'latch-drive': drive, ...others } = file.checks;
      file.checks = { ...(drive && { 'latch-drive': drive }), ...others };
    },
  },
};

function problemsOf(source: string) {
  const loaded = loadModel([{ source, file: 'all.yaml' }], context);
  return loaded.ok ? [] : loaded.error;
}

describe('loading the model', () => {
  test('takes the published figures', () => {
    const model = realModel();
    expect(model.faults.length).toBe(89);
    // What the cut for a locked door leaves out of the 58 checks and 36 parts.
    expect([model.checks.length, model.parts.length]).toEqual([17, 12]);
  });

  test.each(Object.entries(slips))('%s', (code, { path, slip }) => {
    const file = structuredClone(realFile()) as File;
    slip(file);
    const found = problemsOf(stringify(file, { aliasDuplicateObjects: false }));
    expect(found.map((one) => [one.code, one.path])).toContainEqual([code, path]);
    for (const one of found) expect(one.file).toBe('all.yaml');
  });

  test('not-yaml, with its place', () => {
    const [problem] = problemsOf('guide: door-locked\nfaults: [\n');
    expect(problem).toMatchObject({
      code: 'not-yaml',
      facts: { yaml: expect.any(String) as string },
    });
    expect(problem?.place.line).toBeGreaterThan(1);
  });

  test('a problem stands at the line of its value, in its own file', () => {
    const at = realFiles.findIndex(({ file }) => file === 'observations.yaml');
    const source = realFiles[at]?.source.replace('p: [0.75, 0.02, 0.23]', 'p: [0.75, 0.12, 0.23]');
    const line = source?.split('\n').findIndex((one) => one.includes('p: [0.75, 0.12, 0.23]')) ?? 0;
    expect(line).toBeGreaterThan(0);
    const files = realFiles.with(at, { file: 'observations.yaml', source: source ?? '' });
    const loaded = loadModel(files, context);
    expect(loaded.ok ? [] : loaded.error).toMatchObject([
      {
        code: 'row-does-not-sum-to-one',
        file: 'observations.yaml',
        place: { line: line + 1 },
        path: 'observations.door-locked/near.rows.0.p',
      },
    ]);
  });

  test('finds every problem of a file, not the first only', () => {
    const file = structuredClone(realFile()) as File;
    slips['unknown-access'].slip(file);
    slips['unsafe-reading'].slip(file);
    slips['row-does-not-sum-to-one'].slip(file);
    expect(
      problemsOf(stringify(file, { aliasDuplicateObjects: false }))
        .map(({ code }) => code)
        .toSorted(),
    ).toEqual(['row-does-not-sum-to-one', 'unknown-access', 'unsafe-reading']);
  });

  test('a live reading may not claim a dead supply', () => {
    const file = structuredClone(realFile()) as File;
    checkOf(file, 'supply')['proved-dead'] = true;
    expect(problemsOf(stringify(file, { aliasDuplicateObjects: false }))).toMatchObject([
      { code: 'unsafe-reading' },
    ]);
  });

  test('a figure of 0 or 1 is refused anywhere: no evidence could move it', () => {
    const slipped: readonly ((file: File) => unknown)[] = [
      (file) => (faultOf(file, 'sensor').prior = 1),
      (file) => (rowOf(file, NEAR).p = [1, 0, 0]),
      (file) => (checkOf(file, 'fan').catches = 1),
    ];
    for (const slip of slipped) {
      const file = structuredClone(realFile()) as File;
      slip(file);
      const found = problemsOf(stringify(file, { aliasDuplicateObjects: false }));
      expect(found.map(({ code }) => code)).toContain('wrong-shape');
    }
  });
});

describe('the loaded model', () => {
  test('every distribution sums to 1 and holds no 0', () => {
    const model = realModel();
    const rows = [
      model.faults.map(({ prior }) => prior),
      ...(model.facts ?? []).flatMap(({ rows: all }) => all),
      ...model.evidence.flatMap(({ rows: all }) => all),
      ...model.checks.flatMap(({ likelihoods }) => likelihoods),
    ];
    expect(rows.length).toBeGreaterThan(300);
    for (const row of rows) {
      expect(row.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      expect(Math.min(...row)).toBeGreaterThan(0);
    }
  });

  test('a check is likelier to rule a fault in when it is there than when not', () => {
    const model = realModel();
    let compared = 0;
    for (const { id, results, likelihoods } of model.checks)
      for (const [column, { pointsTo }] of results.entries())
        for (const fault of pointsTo) {
          const there = model.faults.findIndex((one) => one.id === fault);
          const elsewhere = model.faults.flatMap((one, index) =>
            pointsTo.includes(one.id) ? [] : (likelihoods[index]?.[column] ?? NaN),
          );
          expect(likelihoods[there]?.[column], `${id} ${fault}`).toBeGreaterThan(
            elsewhere.reduce((a, b) => a + b, 0) / elsewhere.length,
          );
          compared++;
        }
    expect(compared).toBeGreaterThan(15);
  });
});
