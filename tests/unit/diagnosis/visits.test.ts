import { describe, expect, test } from 'vitest';
import { named, readVisits, unknownNames } from '../../../src/diagnosis/read-visits.ts';
import type { VisitsFile } from '../../../src/diagnosis/visits-schema.ts';
import { recorded } from '../../../src/app/visits/stored.ts';
import { logOf, realFile } from './support/logs.ts';
import { realModel, told } from './support/real.ts';

const good = {
  format: 'hobnote-visits',
  version: 1,
  guide: 'door-locked',
  visits: [
    { answers: { doing: 'ended', 'detail.fuel': 'gas' }, fault: 'sensor', parts: ['sensor'] },
  ],
};
const [one] = good.visits;

describe('a file of visits', () => {
  test('is read as it is', () => {
    const read = readVisits(
      JSON.stringify({ ...good, visits: [...good.visits, ...logOf(20, 2, 1, 1)] }),
    );
    expect(read.ok && read.value.visits).toHaveLength(21);
  });

  test('of version 2 has minutes and a remark, one line; version 1 is read as ever', () => {
    const two = { ...good, version: 2, visits: [{ ...one, minutes: 35, remark: 'Loose plug.' }] };
    expect(readVisits(JSON.stringify(two))).toEqual({ ok: true, value: two });
    for (const bad of [{ minutes: 0 }, { minutes: 1.5 }, { remark: 'a\nb' }, { remark: '' }])
      expect(readVisits(JSON.stringify({ ...two, visits: [{ ...one, ...bad }] })).ok).toBe(false);
  });

  test.each([
    ['format', { ...good, format: 'something-else' }],
    ['version', { ...good, version: 0 }],
    ['version', { ...good, version: '2' }],
    ['visits.0.parts', { ...good, visits: [{ ...one, parts: ['sensor', 'sensor'] }] }],
    [
      'visits.0.parts',
      {
        ...good,
        visits: [{ ...one, parts: Array.from({ length: 500 }, (_, n) => `p-${String(n)}`) }],
      },
    ],
    ['', { ...good, technician: 'x' }],
    ['visits.0', { ...good, visits: [{ ...one, name: 'x' }] }],
    ['visits.0.parts', { ...good, visits: [{ answers: {}, fault: 'sensor' }] }],
    ['visits.0.fault', { ...good, visits: [{ ...one, fault: 'It was the sensor.' }] }],
    [
      'visits.0.answers.doing',
      { ...good, visits: [{ ...one, answers: { doing: '555-0100' + ' x' } }] },
    ],
  ])('with a slip at "%s" is refused there', (path, value) => {
    const read = readVisits(JSON.stringify(value));
    expect(read.ok ? [] : read.error.map((problem) => 'path' in problem && problem.path)).toEqual([
      path,
    ]);
  });

  test('of a later form is named so, and a byte order mark is none of its content', () => {
    for (const version of [3, 2.5, 99, Number.MAX_VALUE])
      expect(readVisits(JSON.stringify({ ...good, version, shoes: 1 }))).toEqual({
        ok: false,
        error: [{ code: 'newer-file', version }],
      });
    expect(readVisits(`\ufeff${JSON.stringify(good)}`).ok).toBe(true);
    for (const odd of ['null', '1', '"x"', '[]', '{}', '{"format":"other","version":3}'])
      expect(readVisits(odd)).not.toMatchObject({ error: [{ code: 'newer-file' }] });
  });

  test('that is no JSON is refused', () => {
    expect(readVisits('{')).toMatchObject({ ok: false, error: [{ code: 'not-json' }] });
  });

  test('keeps whether a cure was tried, though no table tells of it by itself', () => {
    const evidence = told('selector-set.quiet', 'try-door.stuck', 'nowhere.yes');
    const { visit } = recorded(
      { model: realModel(), code: '', evidence },
      {
        ...{ fault: 'nothing-found', parts: [] },
      },
    );
    expect(visit.answers).toEqual({
      ...{ complaint: 'door-locked', 'selector-set': 'quiet', 'try-door': 'stuck' },
    });
  });

  test('names of faults and parts are looked up, `other` and `nothing-found` are known', () => {
    const visits = [
      { answers: {}, fault: 'other', parts: [] },
      { answers: {}, fault: 'gremlin', parts: ['sensor', 'flux'] },
    ];
    const read = readVisits(JSON.stringify({ ...good, visits }));
    const nothing = { ...good, visits: [{ answers: {}, fault: 'nothing-found', parts: [] }] };
    expect(unknownNames(nothing as VisitsFile, realFile())).toEqual([]);
    expect(read.ok && unknownNames(read.value, realFile())).toEqual([
      { code: 'unknown-fault', visit: 2, name: 'gremlin' },
      { code: 'unknown-part', visit: 2, name: 'flux' },
    ]);
  });

  test('from before the model was one is named as its tables are, with the guide as complaint', () => {
    const tables = new Set(['door-locked/since', 'listen', 'detail.fuel']);
    const answers = { since: 'never', 'other/listen': 'click', 'detail.fuel': 'gas' };
    const visit = named({ answers, fault: 'sensor', parts: [] }, 'door-locked', tables);
    expect(visit.answers).toEqual({
      ...{ complaint: 'door-locked', 'door-locked/since': 'never' },
      ...{ listen: 'click', 'detail.fuel': 'gas' },
    });
    // A visit that tells its complaint keeps it.
    const own = { ...visit, answers: { ...visit.answers, complaint: 'no-heat' } };
    expect(named(own, 'door-locked', tables)).toEqual(own);
  });
});
