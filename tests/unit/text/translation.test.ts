import { describe, expect, it } from 'vitest';
import { compare, filledIn, type Target } from '../../../src/text/translation.ts';
import { tellTranslation } from '../../../src/text/language-words.ts';

const spanish: Target = {
  language: 'es',
  glossary: {
    breaker: {
      english: ['breaker', 'breakers'],
      use: ['disyuntor'],
      never: ['fusible'],
      why: 'Fuses.',
    },
  },
  same: new Set(['Hobnote']),
};
const english = {
  title: 'Turn the breaker off',
  name: 'Hobnote',
  call: 'Call {{firm}}',
  left_one: '1 question left',
  left_other: '{{count}} questions left',
  lines: ['Wait.', 'Look.'],
  from: 'practice',
};
const whole = {
  title: 'Apague el disyuntor',
  name: 'Hobnote',
  call: 'Llame a {{firm}}',
  left_one: 'Queda 1 pregunta',
  left_many: 'Quedan {{count}} de preguntas',
  left_other: 'Quedan {{count}} preguntas',
  lines: ['Espere.', 'Mire.'],
  from: 'practice',
};
const codes = (own: unknown, target = spanish) =>
  compare(english, own, 'file:', target).map(({ code, path }) => `${code} ${path}`);

describe('a translation beside the English', () => {
  it('is let through where nothing is wrong', () => {
    expect(codes(whole)).toEqual([]);
  });

  it.each([
    ['a key left out', { title: undefined }, ['kind-differs file:title']],
    ['nothing in it', { call: ' ' }, ['text-empty file:call']],
    ['left as in English', { call: english.call }, ['untranslated file:call']],
    ['half in English', { title: 'Apague the disyuntor' }, ['untranslated file:title']],
    ['a fact lost', { call: 'Llame a la empresa' }, ['placeholder-lost file:call']],
    [
      'a fact misspelt',
      { call: 'Llame a {{firma}}' },
      ['placeholder-lost file:call', 'placeholder-unknown file:call'],
    ],
    ['a line lost', { lines: ['Espere.'] }, ['list-length file:lines']],
    ['a line put elsewhere', { lines: 'Espere. Mire.' }, ['kind-differs file:lines']],
    ['a key too many', { more: 'Más' }, ['key-unknown file:more']],
    ['a source translated', { from: 'práctica' }, ['kind-differs file:from']],
    [
      'another word for a term',
      { title: 'Apague el fusible' },
      ['term-missing file:title', 'term-forbidden file:title'],
    ],
  ])('is refused with %s', (_, change, expected) => {
    expect(codes({ ...whole, ...change })).toEqual(expected);
  });

  it('lacks no key and no counted form of its language', () => {
    const { title: _title, left_many: _many, ...rest } = whole;
    expect(codes(rest)).toEqual(['key-missing file:title', 'form-missing file:left_many']);
  });

  // The forms of Arabic: Unicode CLDR, plural rules for `ar`.
  it('counts as its language does', () => {
    const forms = codes(whole, { ...spanish, language: 'ar', glossary: {} });
    expect(forms.filter((code) => code.startsWith('form-missing'))).toEqual(
      ['zero', 'two', 'few'].map((form) => `form-missing file:left_${form}`),
    );
  });

  it('has every problem told with its place and what to do', () => {
    const broken = { title: 'The fusible', lines: [], left_other: '', call: '{{x}}', more: '' };
    const problems = compare(english, broken, 'file:', spanish);
    expect(new Set(problems.map(({ code }) => code)).size).toBeGreaterThan(8);
    for (const problem of problems) {
      const { what, hint } = tellTranslation(problem);
      expect(what).toMatch(/^file:\w.*: .+\.$/);
      expect(hint).toMatch(/^[A-Z].+\.$/);
    }
  });
});

describe('a language that is behind', () => {
  it('says what it can, and the rest in English with its own counted forms', () => {
    const { lines: _lines, left_one: _one, left_many: _many, left_other: _other, ...rest } = whole;
    expect(filledIn(english, rest, 'es')).toEqual({
      ...rest,
      lines: english.lines,
      left_one: english.left_one,
      left_many: english.left_other,
      left_other: english.left_other,
    });
    expect(filledIn({ a: english }, {}, 'ar')).toHaveProperty('a.left_few', english.left_other);
    expect(filledIn(english, whole, 'es')).toEqual(whole);
  });

  it('lacks a counted sentence once', () => {
    const { left_one: _one, left_many: _many, left_other: _other, ...rest } = whole;
    expect(codes(rest)).toEqual(['key-missing file:left_other']);
  });
});
