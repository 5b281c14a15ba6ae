import { describe, expect, test } from 'vitest';
import { buildModel } from '../../../src/diagnosis/build-model.ts';
import { changed, learn, ofFigures } from '../../../src/diagnosis/learn.ts';
import type { LearnOptions } from '../../../src/diagnosis/learn.ts';
import { posterior } from '../../../src/diagnosis/posterior.ts';
import { clearlyBetter, score, study } from '../../../src/diagnosis/score.ts';
import type { RecordedVisit } from '../../../src/diagnosis/visits-schema.ts';
import { guides } from '../../../src/content/load.ts';
import { selectionOf } from '../../../src/diagnosis/selection.ts';
import { logOf, realFile } from './support/logs.ts';
import { many } from './support/models.ts';

const file = realFile();
const selection = selectionOf(buildModel(file), guides());
const options: LearnOptions = { strength: 200, minimum: 10, selection };

const heldOut = (visits: readonly RecordedVisit[]) => study(file, visits, options).heldOut;

const bare = (fault: string, answers: Readonly<Record<string, string>> = {}): RecordedVisit => ({
  answers,
  fault,
  parts: [],
});
const visit = (fault: string, answers: Readonly<Record<string, string>> = {}): RecordedVisit =>
  bare(fault, { complaint: 'error-shows', ...answers });

/** Where the priors change: the first fault's place stands for all. */
const PRIORS = 'faults.' + (Object.keys(file.faults)[0] ?? '');

const wayOf = (change: { readonly paths: readonly (readonly (string | number)[])[] }) =>
  (change.paths[0] ?? []).slice(0, -1).join('.');

describe('learning', () => {
  test('counts a row by the faults it speaks for, the default by all others', () => {
    // `listen`: the first row is the hung control's, the next the hook's; the cutoff has one, too.
    const visits = [
      ...many(30, () => visit('control-hung', { listen: 'nothing' })),
      ...many(20, () => visit('cooling-fan', { listen: 'hum-click' })),
      ...many(5, () => visit('latch-hook', { listen: 'hum-click' })),
    ];
    const heard = learn(file, visits, options).filter(({ paths }) => paths[0]?.[1] === 'listen');
    const places = ['observations.listen.default.p', 'observations.listen.rows.0.p'];
    expect(heard.map(wayOf)).toEqual(places);
    // By hand: (200 · 0.28 + 20) / 220 and (200 · 0.74) / 230.
    expect(heard.map(({ seen, after }) => [seen, after[0]])).toEqual([
      [20, 0.3455],
      [30, 0.6435],
    ]);
  });

  test('counts a row with a condition only where it held', () => {
    // The lock's own row of the door speaks where the lock went off, else the default.
    const tried = { 'control-lock': 'went-off', 'try-door': 'stuck' };
    const visits = [
      ...many(20, () => visit('control-lock', tried)),
      ...many(30, () => visit('control-lock', { ...tried, 'control-lock': 'no-change' })),
    ];
    const told = (deciding: readonly string[]) =>
      learn(file, visits, { ...options, selection: { ...selection, deciding } }).filter(
        ({ paths }) => paths[0]?.[1] === 'try-door',
      );
    expect(told([]).map(({ seen }) => seen)).toEqual([30, 20]);
    expect(told([])[1]?.subject).toMatchObject({ given: { 'control-lock': ['went-off'] } });
    // A door that opens needs no visit: among visits nearly all are stuck.
    expect(selection.deciding).toContain('try-door');
    expect(told(selection.deciding)).toEqual([]);
  });

  test('leaves tables alone that hang on a hidden fact', () => {
    const readings = { first: 'over', second: 'over', third: 'over' };
    const visits = many(50, () =>
      visit('sensor', { 'door-locked/near': 'heat', fuel: 'dual', ...readings }),
    );
    expect(learn(file, visits, options).map(wayOf)).toEqual([PRIORS]);
  });

  test('counts the priors of a complaint by its visits; unlisted and not found as the fault for it', () => {
    const none = [...many(200, () => visit('other')), ...many(100, () => visit('nothing-found'))];
    const [priors, ...rest] = learn(
      file,
      [...many(100, () => visit('sensor')), ...none, bare('sensor')],
      options,
    );
    expect(rest).toEqual([]);
    expect(priors?.seen).toBe(400);
    const names = Object.keys(file.faults);
    const moved = (name: string) => {
      const place = names.indexOf(name);
      return (priors?.after[place] ?? NaN) / (priors?.before[place] ?? NaN);
    };
    expect(moved('none-of-these')).toBeGreaterThan(moved('sensor'));
    expect(moved('sensor')).toBeGreaterThan(1.1);
    // Not one of its visits, though many of its calls come as this complaint.
    expect(moved('control-board')).toBeLessThan(0.6);
    // Hardly a call of it does.
    expect(moved('ports-clogged')).toBeGreaterThan(0.8 * moved('burner-head'));
  });

  test('divides the share of visits by the chance that a fault leads to one', () => {
    // So many outweigh the old figures. 2 visits to 1, of the first only every fifth call.
    const guide = 'error-shows';
    const names = Object.keys(file.faults);
    const chances = names.map((name) => (name === 'sensor' ? 0.2 : 1));
    const visits = [...many(2000, () => visit('sensor')), ...many(1000, () => visit('keypad'))];
    const [priors] = learn(file, visits, {
      ...{ strength: 1, minimum: 10, selection: { visit: { [guide]: chances }, deciding: [] } },
    });
    const model = buildModel(changed(file, priors ? [priors] : []));
    const told = [{ key: 'complaint', answer: guide }];
    const odds = (of: typeof model) => {
      const share = (name: string) =>
        posterior(of, told).find(({ fault }) => String(fault) === name)?.share ?? NaN;
      return share('sensor') / share('keypad');
    };
    // Calls are 2,000 / 0.2 to 1,000; calls that came as another complaint are left as they were.
    expect(odds(model)).toBeGreaterThan(7);
    expect(odds(model)).toBeLessThan(10.5);
  });

  test('fewer visits than the minimum leave a distribution as it is', () => {
    const visits = many(9, () => visit('sensor', { listen: 'error' }));
    expect(learn(file, visits, options)).toEqual([]);
    expect(learn(file, visits, { ...options, minimum: 9 }).length).toBeGreaterThan(0);
  });

  test('answers that no table lists count for nothing', () => {
    const visits = many(50, () => visit('sensor', { listen: 'unsure', nowhere: 'yes' }));
    expect(learn(file, visits, options).map(wayOf)).toEqual([PRIORS]);
  });

  test('the stronger the old figures, the less they move', () => {
    const visits = many(50, () => visit('sensor', { listen: 'hum-click' }));
    const moved = [10, 100, 1000].map((strength) => {
      const heard = learn(file, visits, { ...options, strength }).find(
        ({ paths }) => paths[0]?.[1] === 'listen',
      );
      return heard?.after[0] ?? NaN;
    });
    expect(moved).toEqual(moved.toSorted((a, b) => b - a));
    expect(moved.at(-1)).toBeGreaterThan(0.03);
  });

  test('new distributions sum to 1, hold no 0 and load; the old file is left as it is', () => {
    const copy = structuredClone(file);
    const changes = learn(file, logOf(400, 2, 3, 4), { ...options, strength: 1, minimum: 1 });
    expect(changes.length).toBeGreaterThan(50);
    for (const { after } of changes) {
      expect(after.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      expect(Math.min(...after)).toBeGreaterThanOrEqual(0.0001);
    }
    const next = changed(file, changes);
    expect(file).toEqual(copy);
    expect(next).not.toEqual(copy);
    for (const { paths, after } of changes)
      for (const [index, path] of paths.entries())
        expect(path.reduce<unknown>((inside, key) => (inside as never)[key], next)).toBe(
          after[index],
        );
  });
});

describe('learning on a simulated log', () => {
  test.each([11, 12, 13])('figures off by up to two (%d): better on visits never seen', (truth) => {
    const log = logOf(1500, 2, truth, 1);
    const found = heldOut(log);
    if (!found) throw new Error('nothing held out');
    expect(clearlyBetter(found)).toBe(true);
    expect(found.after.score.brier).toBeLessThan(found.before.score.brier);
    // And on another log of the same truth.
    const fresh = ofFigures(file, logOf(1500, 2, truth, 2));
    const before = score(buildModel(file), fresh);
    const after = score(buildModel(changed(file, learn(file, log, options))), fresh);
    expect(after.log).toBeGreaterThan(before.log);
    expect(after.brier).toBeLessThan(before.brier);
  });

  test('figures right, 3,000 visits: hardly harmed, did one write them all the same', () => {
    const guide = 'wrong-temperature';
    const next = changed(file, learn(file, logOf(3000, 1, 1, 1, guide), options));
    const fresh = ofFigures(file, logOf(3000, 1, 1, 2, guide));
    const lost = score(buildModel(file), fresh).log - score(buildModel(next), fresh).log;
    // Without regard for who is visited it is 0.022 nats a visit.
    expect(lost).toBeLessThan(0.005);
  });

  test.each([100, 500, 1500])('figures right, %d visits: nothing is proposed', (count) => {
    for (const seed of [1, 2, 3]) {
      const found = heldOut(logOf(count, 1, 1, seed));
      if (!found) throw new Error('nothing held out');
      expect(clearlyBetter(found), `seed ${seed}`).toBe(false);
    }
  });
});

describe('scores', () => {
  test('by hand: the shares without evidence are the priors', () => {
    const priors = Object.values(file.faults).map(({ prior }) => prior);
    const sensor = file.faults['sensor']?.prior ?? NaN;
    const squares = priors.reduce((all, one) => all + one * one, 0);
    const { log, brier } = score(buildModel(file), [bare('sensor'), bare('sensor')]);
    expect(log).toBeCloseTo(Math.log(sensor), 12);
    // (1 − p)² instead of p² for the true one.
    expect(brier).toBeCloseTo(squares - sensor ** 2 + (1 - sensor) ** 2, 12);
  });

  test('nothing is held out of fewer visits than there are parts', () => {
    const visits = many(4, () => visit('sensor'));
    expect(heldOut(visits)).toBeUndefined();
  });

  test('a gain is clear from two standard errors on', () => {
    const found = heldOut(many(20, () => visit('sensor')));
    if (!found) throw new Error('nothing held out');
    expect(clearlyBetter({ ...found, gain: 0.21, gainError: 0.1 })).toBe(true);
    expect(clearlyBetter({ ...found, gain: 0.19, gainError: 0.1 })).toBe(false);
    expect(clearlyBetter({ ...found, gain: -0.5, gainError: 0.1 })).toBe(false);
  });
});
