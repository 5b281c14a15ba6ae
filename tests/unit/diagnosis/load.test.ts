import { describe, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { loadModel } from '../../../src/diagnosis/load.ts';
import type { ModelProblemCode } from '../../../src/diagnosis/problem.ts';
import type { CheckFile, FaultsFile } from '../../../src/diagnosis/schema.ts';
import { realContext, realFaults, realModel } from './support/real.ts';

/** The authors' form, open to change. */
type Open<T> = { -readonly [K in keyof T]: Open<T[K]> };
type File = Open<FaultsFile>;

const context = realContext();
const checkOf = (file: File, name: string) => file.checks[name] as Open<CheckFile>;
const tableOf = (file: File, name: string) => {
  const table = file.evidence[name];
  if (!table) throw new Error(`no table ${name}`);
  return table;
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
    path: 'evidence.near.rows.0.faults.0',
    slip: (file) => tableOf(file, 'near').rows[0]?.faults.splice(0, 1, 'gremlin'),
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
  'wrong-guide': { path: 'guide', slip: (file) => (file.guide = 'burner') },
  'unknown-evidence': {
    path: 'evidence.weather',
    slip: (file) => (file.evidence['weather'] = tableOf(file, 'forced')),
  },
  'unknown-answer': {
    path: 'evidence.near.answers.0',
    slip: (file) => (tableOf(file, 'near').answers[0] = 'tepid'),
  },
  'unsure-is-no-evidence': {
    path: 'evidence.near.answers.0',
    slip: (file) => (tableOf(file, 'near').answers[0] = 'unsure'),
  },
  twice: {
    path: 'fixed-order.15',
    slip: (file) => file['fixed-order'].push('fan'),
  },
  'priors-do-not-sum-to-one': {
    path: 'faults',
    slip: (file) => (faultOf(file, 'sensor').prior = 0.06),
  },
  'row-does-not-sum-to-one': {
    path: 'evidence.near.default.p',
    slip: (file) => (tableOf(file, 'near').default.p = [0.3, 0.5, 0.1]),
  },
  'row-length': {
    path: 'evidence.near.default.p',
    slip: (file) => (tableOf(file, 'near').default.p = [0.3, 0.5, 0.1, 0.1]),
  },
  'too-many-checks': {
    path: 'checks',
    slip: (file) => {
      for (const name of ['one-more', 'two-more']) {
        file.checks[name] = checkOf(file, 'fan');
        file['fixed-order'].push(name);
      }
    },
  },
  'too-many-faults': {
    path: 'faults',
    slip: (file) => {
      const sensor = faultOf(file, 'sensor');
      for (let more = 0; more < 15; more++) {
        file.faults[`sensor-${more}`] = { ...sensor, prior: sensor.prior / 16 };
        checkOf(file, 'sensor-at-plug').results['off']?.push(`sensor-${more}`);
      }
      sensor.prior /= 16;
    },
  },
  'too-many-parts': {
    path: 'parts',
    slip: (file) => {
      for (let more = 0; more < 6; more++) file.parts[`bolt-${more}`] = { cost: 1 };
    },
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
    path: 'faults.cooling-fan',
    slip: (file) => (checkOf(file, 'fan').results['seized'] = ['sensor']),
  },
  'unsafe-reading': {
    path: 'checks.latch-motor.reading',
    slip: (file) => (checkOf(file, 'latch-motor')['wires-off'] = false),
  },
  'checks-in-a-circle': {
    path: 'checks.latch-motor.after',
    slip: (file) => (checkOf(file, 'latch-motor').after = ['latch-drive']),
  },
  'fixed-order-breaks-after': {
    path: 'fixed-order.0',
    slip: (file) => file['fixed-order'].unshift(...file['fixed-order'].splice(6, 1)),
  },
  'fixed-order-misses': {
    path: 'fixed-order',
    slip: (file) => file['fixed-order'].pop(),
  },
};

function problemsOf(source: string) {
  const loaded = loadModel(source, 'faults.yaml', context);
  return loaded.ok ? [] : loaded.error;
}

describe('loading faults.yaml', () => {
  test('takes the published figures', () => {
    const model = realModel();
    expect([model.faults.length, model.checks.length, model.parts.length]).toEqual([19, 15, 11]);
  });

  test.each(Object.entries(slips))('%s', (code, { path, slip }) => {
    const file = parse(realFaults) as File;
    slip(file);
    const found = problemsOf(stringify(file, { aliasDuplicateObjects: false }));
    expect(found.map((one) => [one.code, one.path])).toContainEqual([code, path]);
    for (const one of found) expect(one.file).toBe('faults.yaml');
  });

  test('not-yaml, with its place', () => {
    const [problem] = problemsOf('guide: door-locked\nfaults: [\n');
    expect(problem).toMatchObject({
      code: 'not-yaml',
      facts: { yaml: expect.any(String) as string },
    });
    expect(problem?.place.line).toBeGreaterThan(1);
  });

  test('a problem stands at the line of its value', () => {
    const source = realFaults.replace('p: [0.75, 0.18, 0.07]', 'p: [0.75, 0.28, 0.07]');
    const line = source.split('\n').findIndex((one) => one.includes('p: [0.75, 0.28, 0.07]')) + 1;
    expect(line).toBeGreaterThan(0);
    expect(problemsOf(source)).toMatchObject([
      { code: 'row-does-not-sum-to-one', place: { line }, path: 'evidence.near.rows.0.p' },
    ]);
  });

  test('finds every problem of a file, not the first only', () => {
    const file = parse(realFaults) as File;
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
    const file = parse(realFaults) as File;
    checkOf(file, 'supply')['proved-dead'] = true;
    expect(problemsOf(stringify(file, { aliasDuplicateObjects: false }))).toMatchObject([
      { code: 'unsafe-reading' },
    ]);
  });

  test('a figure of 0 or 1 is refused anywhere: no evidence could move it', () => {
    for (const [from, to] of [
      ['prior: 0.35', 'prior: 1'],
      ['p: [0.75, 0.18, 0.07]', 'p: [1, 0, 0]'],
      ['catches: 0.97', 'catches: 1'],
    ] as const) {
      expect(realFaults).toContain(from);
      const found = problemsOf(realFaults.replace(from, to));
      expect(found.map(({ code }) => code)).toContain('wrong-shape');
    }
  });
});

describe('the loaded model', () => {
  test('every distribution sums to 1 and holds no 0', () => {
    const model = realModel();
    const rows = [
      model.faults.map(({ prior }) => prior),
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
