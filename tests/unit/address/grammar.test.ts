import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KEYS, MOST, hashOf, parseRaw } from '../../../src/address/grammar.ts';
import type { RawFragment } from '../../../src/address/grammar.ts';

const text = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 40 });
const raw = fc.record(Object.fromEntries(KEYS.map((key) => [key, text])), {
  requiredKeys: [],
  noNullPrototype: true,
});
const run = { numRuns: 500, seed: 20261128 };

describe('the grammar of the fragment', () => {
  it('gives back what was written', () => {
    fc.assert(
      fc.property(raw, (values: RawFragment) => {
        expect(parseRaw(hashOf(values))).toEqual(values);
      }),
      run,
    );
  });

  it('has one spelling, in the order of the keys, that the URL standard leaves as it is', () => {
    fc.assert(
      fc.property(raw, fc.constantFrom(...KEYS), (values: RawFragment, first) => {
        const turned = { ...(first in values ? { [first]: values[first] } : {}), ...values };
        const hash = hashOf(turned);
        expect(hash).toBe(hashOf(values));
        expect(new URL(hash, 'https://range.example/').hash).toBe(hash);
      }),
      run,
    );
    expect(hashOf({ j: 'a.b~c/d.e', g: 'x', e: 'F9 + E1' })).toBe(
      '#g=x&j=a.b~c/d.e&e=F9%20%2B%20E1',
    );
    expect(hashOf({ j: '', w: undefined })).toBe('');
  });

  it('reads addresses of old, written as forms are (x-www-form-urlencoded)', () => {
    expect(parseRaw('#j=danger.none&g=door-locked&e=F9+%2B+E1')).toEqual({
      g: 'door-locked',
      j: 'danger.none',
      e: 'F9 + E1',
    });
  });

  it('reads anything at all without throwing, and spells it its own way', () => {
    const piece = fc.constantFrom(
      ...'%=&#+~./ ',
      '%E0%80',
      '\ud800',
      '\0',
      '😀',
      'j=',
      '&__proto__=',
    );
    fc.assert(
      fc.property(fc.string({ unit: piece, maxLength: 60 }), (hash) => {
        const hashed = hashOf(parseRaw(hash));
        expect(hashOf(parseRaw(hashed))).toBe(hashed);
      }),
      run,
    );
  });

  it('counts the first of two, and reads nothing beyond its bound', () => {
    expect(parseRaw('#j=a.b&j=c.d&constructor=1')).toEqual({ j: 'a.b' });
    expect(parseRaw(`#e=${'x'.repeat(MOST)}&m=y`).m).toBeUndefined();
  });
});

/** Signs of a fragment made or taken apart by hand. */
const BY_HAND = [
  /['"`/]#(?:[a-z]{1,2}=|\$\{)/,
  /URLSearchParams/,
  /hash\.(?:slice|replace|split|includes|match)/,
  /split\(['"]#/,
];

it('is known to src/address alone: no other file makes or takes apart a fragment', () => {
  const root = new URL('../../../src/', import.meta.url);
  const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter(
    (name) => /\.(?:ts|tsx|astro)$/.test(name) && !name.startsWith('address'),
  );
  expect(files.length).toBeGreaterThan(300);
  const found = files.flatMap((name) =>
    readFileSync(new URL(name, root), 'utf8')
      .split('\n')
      .filter((line) => BY_HAND.some((sign) => sign.test(line)))
      .map((line) => `${name}: ${line.trim()}`),
  );
  expect(found).toEqual([]);
  for (const line of [
    "'#j=' + journey",
    'new URLSearchParams(location.hash)',
    'location.hash.slice(1)',
  ])
    expect(
      BY_HAND.some((sign) => sign.test(line)),
      line,
    ).toBe(true);
});
