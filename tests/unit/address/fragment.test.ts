import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KEYS } from '../../../src/address/grammar.ts';
import { formatFragment, parseFragment } from '../../../src/address/fragment.ts';
import type { Fragment } from '../../../src/address/fragment.ts';
import { formatJourney, parseJourney } from '../../../src/address/journey-text.ts';
import type { AnswerId, NodeId } from '../../../src/guide/types.ts';

const name = fc.string({
  unit: fc.constantFrom(...'abcxyz019-'),
  minLength: 1,
  maxLength: 12,
});
/** A node of the journey's first guide, or of one it handed over to. */
const nodeName = fc
  .tuple(name, fc.option(name))
  .map(([id, other]) => (other === null ? id : `${other}/${id}`) as NodeId);
const given = fc.record({ at: nodeName, answer: name.map((id) => id as AnswerId) });
const journey = fc.array(given, { maxLength: 25 });
const time = fc.integer({ min: 1, max: 36 ** 7 - 1 });
const timer = fc
  .record({ node: nodeName, end: time, counted: time }, { requiredKeys: ['node', 'end'] })
  .filter(({ end, counted = 0 }) => counted <= end);
/** Text as it comes out of reading: tidy, and within the part's length. */
const text = (most: number) =>
  fc
    .string({ unit: 'grapheme', maxLength: most })
    .map((value) => parseFragment(`r=${encodeURIComponent(value)}`).fragment.remark ?? '')
    .map((value) => [...value].slice(0, most).join('').trim())
    .filter((value) => value !== '');

const fragment: fc.Arbitrary<Fragment> = fc.record(
  {
    guide: name,
    journey,
    details: fc.dictionary(name, name, { maxKeys: 8, noNullPrototype: true }),
    error: text(24),
    made: fc
      .date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
      .map((date) => date.toISOString().slice(0, 10)),
    earlyTap: given,
    timer,
    code: text(40),
    model: text(30),
    remark: text(100),
    stored: fc.stringMatching(/^[a-z0-9]{1,16}$/),
  },
  { requiredKeys: ['journey', 'details'] },
);

describe('the fragment', () => {
  it('comes back as it was written, every part', () => {
    fc.assert(
      fc.property(fragment, (written) => {
        const hash = formatFragment(written);
        expect(parseFragment(`#${hash}`)).toEqual({ fragment: written, problems: [] });
        expect(parseFragment(hash).fragment).toEqual(written);
      }),
      { numRuns: 200, seed: 20261125 },
    );
  });

  it('is readable in an address', () => {
    expect(
      formatFragment({
        journey: parseJourney('danger.none~since.overnight'),
        error: 'F9 E1',
        details: { fuel: 'gas', kind: 'wall' },
        made: '2026-11-25',
        timer: { node: 'wait' as NodeId, end: 1_795_600_000 },
        model: 'AB-1',
      }),
    ).toBe(
      'j=danger.none~since.overnight&e=F9%20E1&d=fuel.gas~kind.wall&on=2026-11-25&w=wait.tp1ylc&m=AB-1'.replace(
        'tp1ylc',
        (1_795_600_000).toString(36),
      ),
    );
  });

  it('is nothing when there is nothing to write', () => {
    expect(formatFragment(parseFragment('').fragment)).toBe('');
  });

  it('reads whatever it is given without throwing, and what it read comes back', () => {
    const piece = fc.constantFrom(
      ...['%', '%2', '&', '=', '~', '.', '#', '+', ' ', '<', '"', '-', 'a', '9', 'Z', '__proto__'],
      ...['\0', '\u202e', '\ufeff', '\ud800', '\n', '😀', '%E2%80%AE', '%00', '%FF', '2026-13-01'],
    );
    const value = fc.string({ unit: piece, maxLength: 40 });
    const junk = fc.oneof(
      value,
      fc
        .array(fc.tuple(fc.constantFrom(...KEYS), value), { maxLength: 10 })
        .map((parts) => parts.map((part) => part.join('=')).join('&')),
    );
    fc.assert(
      fc.property(junk, (hash) => {
        const { fragment: read } = parseFragment(`#${hash}`);
        expect(parseFragment(formatFragment(read)).fragment).toEqual(read);
      }),
      { numRuns: 1000, seed: 20261125 },
    );
  });
});

describe('a hostile fragment', () => {
  const parse = (hash: string) => parseFragment(hash);

  it('is read to its first 16,384 characters', () => {
    const { fragment: read, problems } = parse(`#e=F9&r=${'x'.repeat(20_000)}`);
    expect(problems).toContainEqual({ code: 'fragment-too-long', length: 20_007, most: 16_384 });
    expect(problems).toContainEqual({ code: 'text-cut', part: 'r', most: 500 });
    expect(read).toEqual({ journey: [], details: {}, error: 'F9', remark: 'x'.repeat(500) });
  });

  it.each([
    ['a direction override', '%E2%80%AEabc%E2%80%AC', 'abc'],
    ['isolates', '%E2%81%A6a%E2%81%A9b', 'ab'],
    ['a null character', 'a%00b', 'ab'],
    ['an escape sequence', '%1B[31mred', '[31mred'],
    ['a line break', 'a%0D%0Ab', 'a b'],
    ['a line separator', 'a%E2%80%A8b', 'a b'],
  ])('loses %s', (_, value, clean) => {
    for (const part of ['e', 'm', 'r'] as const) {
      const { fragment: read, problems } = parse(`#${part}=${value}`);
      expect(read[({ e: 'error', m: 'model', r: 'remark' } as const)[part]]).toBe(clean);
      expect(problems).toEqual([{ code: 'text-cleaned', part }]);
    }
  });

  it('keeps markup as the text it is', () => {
    expect(parse('#e=<script>alert(1)</script>').fragment.error).toBe('<script>alert(1)</script>');
  });

  it.each<[string, string, Partial<Fragment>]>([
    ['j', 'j=danger.none~<img>.x~since.overnight', { journey: parseJourney('danger.none') }],
    ['j', 'j=danger', { journey: [] }],
    ['j', 'j=a.b.c', { journey: [] }],
    [
      'j',
      `j=${Array(80).fill('a.b').join('~')}`,
      { journey: parseJourney(Array(64).fill('a.b').join('~')) },
    ],
    ['d', 'd=fuel.gas~__proto__.x~kind', { details: { fuel: 'gas' } }],
    ['on', 'on=2026-02-30', {}],
    ['on', 'on=yesterday', {}],
    ['w', 'w=wait.-5', {}],
    ['w', 'w=wait.zzzzzzzz', {}],
    ['w', 'w=wait', {}],
    ['w', 'w=wait.tp1ylc.0', {}],
    ['w', 'w=wait.tp1ylc.tp1ylc.1', {}],
    ['a', 'a=near.heat~near.quiet', {}],
    ['a', 'a=near', {}],
  ])('reports an unreadable %s in %s and keeps the rest', (part, hash, rest) => {
    expect(parse(`#${hash}&m=X1`)).toEqual({
      fragment: { journey: [], details: {}, model: 'X1', ...rest },
      problems: [{ code: 'part-unreadable', part }],
    });
  });

  it('passes over keys it does not know', () => {
    expect(parse('#utm=1&j=a.b&q').fragment).toEqual({
      journey: parseJourney('a.b'),
      details: {},
    });
  });
});

describe('the journey in a fragment', () => {
  it('comes back as it was written', () => {
    fc.assert(
      fc.property(journey, (written) => {
        expect(parseJourney(formatJourney(written))).toEqual(written);
      }),
      { seed: 20261125 },
    );
  });

  it('is empty for an empty text', () => {
    expect(parseJourney('')).toEqual([]);
  });
});
