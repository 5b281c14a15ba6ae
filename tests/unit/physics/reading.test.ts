import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseReading, parseResistance } from '../../../src/physics/reading.ts';

const ohms = { min: 0, max: 1e8 };
const degrees = { min: -200, max: 850 };

describe('parseReading', () => {
  test.each([
    ['1080', 1080],
    [' 1082.25 ', 1082.25],
    ['1082,25', 1082.25],
    ['1082,250', 1082.25],
    ['0,125', 0.125],
    ['109.735', 109.735],
    ['.5', 0.5],
    ['5.', 5],
    ['+7', 7],
    ['-0', 0],
    ['100000000', 1e8],
  ])('reads %o', (entry, value) => {
    expect(parseReading(entry, ohms)).toEqual({ ok: true, value });
  });

  test.each([
    ['-40', -40],
    ['\u221217,5', -17.5],
  ])('reads %o where negative values are allowed', (entry, value) => {
    expect(parseReading(entry, degrees)).toEqual({ ok: true, value });
  });

  test.each([
    ['', { code: 'empty' }],
    ['  \t', { code: 'empty' }],
    ['abc', { code: 'not-a-number', entry: 'abc' }],
    ['1080 ohm', { code: 'not-a-number', entry: '1080 ohm' }],
    ['1e3', { code: 'not-a-number', entry: '1e3' }],
    ['0x10', { code: 'not-a-number', entry: '0x10' }],
    ['Infinity', { code: 'not-a-number', entry: 'Infinity' }],
    ['1,082.25', { code: 'not-a-number', entry: '1,082.25' }],
    ['1.2.3', { code: 'not-a-number', entry: '1.2.3' }],
    ['--5', { code: 'not-a-number', entry: '--5' }],
    ['.', { code: 'not-a-number', entry: '.' }],
    ['<b>7</b>', { code: 'not-a-number', entry: '<b>7</b>' }],
    ['1,091', { code: 'ambiguous-comma', decimal: 1.091, thousands: 1091 }],
    ['-5', { code: 'negative', value: -5 }],
    ['1000000000', { code: 'too-large', value: 1e9, max: 1e8 }],
    ['9'.repeat(400), { code: 'too-long', length: 400, max: 20 }],
  ])('refuses %o', (entry, error) => {
    expect(parseReading(entry, ohms)).toEqual({ ok: false, error });
  });

  test('says too small, not negative, where negative values are allowed', () => {
    expect(parseReading('-300', degrees)).toMatchObject({
      error: { code: 'too-small', min: -200 },
    });
    expect(parseReading('3', { min: 5, max: 9 })).toMatchObject({ error: { code: 'too-small' } });
  });

  test('reads back every number as JavaScript writes it, with a point and with a comma', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), (hundredths) => {
        const value = hundredths / 100;
        const text = String(value);
        expect(parseReading(text, ohms)).toEqual({ ok: true, value });
        expect(parseReading(text.replace('.', ','), ohms)).toEqual({ ok: true, value });
      }),
    );
  });

  test('never throws, and never gives a value outside the limits', () => {
    // The characters of readings and of what is nearly one; anything else is refused as any letter is.
    const unit = fc.constantFrom(...'0123456789012345678901234567890123456789..,,-+− ex°Ω\0💥');
    let taken = 0;
    fc.assert(
      fc.property(fc.string({ unit, maxLength: 6 }), (entry) => {
        const read = parseReading(entry, degrees);
        if (!read.ok) return;
        taken += 1;
        expect(Math.abs(read.value - 325)).toBeLessThanOrEqual(525);
      }),
      { numRuns: 2000, seed: 20261128 },
    );
    expect(taken).toBeGreaterThan(200);
  });
});

describe('parseResistance', () => {
  test.each(['OL', '0L', 'o.l', 'O.L.', '∞', ' ol '])('takes %o for an open circuit', (entry) => {
    expect(parseResistance(entry, 1e8)).toEqual({ ok: true, value: Infinity });
  });

  test('is otherwise as strict as any reading', () => {
    expect(parseResistance('1082,3', 1e8)).toEqual({ ok: true, value: 1082.3 });
    expect(parseResistance('0', 1e8)).toEqual({ ok: true, value: 0 });
    expect(parseResistance('cold', 1e8)).toMatchObject({ error: { code: 'not-a-number' } });
    expect(parseResistance('-1', 1e8)).toMatchObject({ error: { code: 'negative' } });
    expect(parseResistance('1000000000', 1e8)).toMatchObject({ error: { code: 'too-large' } });
  });
});
