import { expect, test } from 'vitest';
import { guides } from '../../../src/content/load.ts';
import { COMPLAINT } from '../../../src/diagnosis/evidence.ts';
import { selectionOf } from '../../../src/diagnosis/selection.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import { simulate } from './support/simulate.ts';
import { realContext, realModel } from './support/real.ts';

const selection = selectionOf(realModel(), guides());

test('the faults of simulated visits come as often as the chances of a visit say', () => {
  const model = realModel();
  const visits = simulate({ ...realContext(), truth: model }, 3000, seeded(5));
  const complaint = model.evidence.find(({ key }) => key === COMPLAINT);
  const place = complaint?.answers.indexOf('door-locked') ?? -1;
  const weights = model.faults.map(
    ({ prior }, fault) =>
      prior *
      (complaint?.rows[complaint.rowOf[fault] ?? 0]?.[place] ?? NaN) *
      (selection.visit['door-locked']?.[fault] ?? NaN),
  );
  const total = weights.reduce((a, b) => a + b, 0);
  let looked = 0;
  for (const [fault, weight] of weights.entries()) {
    const p = weight / total;
    const seen = visits.filter((one) => one.fault === fault).length / visits.length;
    if (p < 0.005) continue;
    looked++;
    // Four standard errors.
    const error = Math.sqrt((p * (1 - p)) / visits.length);
    expect(Math.abs(seen - p), model.faults[fault]?.id).toBeLessThan(4 * error);
  }
  expect(looked).toBeGreaterThan(12);
});

test('an oven that cools by itself is seldom visited, a motor mostly', () => {
  const chance = (fault: string) => {
    const place = realModel().faults.findIndex(({ id }) => String(id) === fault);
    return selection.visit['door-locked']?.[place];
  };
  expect(chance('not-cool')).toBeLessThan(0.05);
  expect(chance('latch-motor')).toBeGreaterThan(0.8);
});

test('what decides a visit is told from what does not', () => {
  expect(selection.deciding).toEqual(
    expect.arrayContaining(['try-door', 'door-locked/wait', 'short-clean']),
  );
  for (const key of ['listen', 'display', 'forced', 'detail.storm'])
    expect(selection.deciding).not.toContain(key);
});
