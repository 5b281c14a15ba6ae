import { describe, expect, it } from 'vitest';
import { glossarySchema, refused } from '../../../src/text/glossary.ts';
import { tellTranslation } from '../../../src/text/language-words.ts';

const glossary = glossarySchema.parse({
  unlock: { use: ['unlock'], never: [String.raw`\blets? go\b`] },
  around: { use: ['around'], never: [String.raw`\bround the\b`] },
});
const found = (value: unknown) =>
  refused(value, 'file:', glossary).map((one) => `${one.path} ${'found' in one ? one.found : ''}`);

describe('what no sentence says', () => {
  it('is found wherever it stands, in capitals too, with its place', () => {
    const texts = { title: 'The door Lets go', lines: ['Wait.', 'Look all round the door.'] };
    expect(found(texts)).toEqual(['file:title Lets go', 'file:lines.1 round the']);
  });

  it('is no part of another word, and no name', () => {
    expect(found({ title: 'Look around the door: it let Gordon out.', from: 'lets go' })).toEqual(
      [],
    );
  });

  it('is told with what to say in its place', () => {
    const [problem] = refused({ title: 'It lets go' }, 'file:', glossary);
    expect(problem && tellTranslation(problem)).toEqual({
      what: 'file:title: the glossary refuses “lets go”.',
      hint: 'Say “unlock”.',
    });
  });

  it('has to be a pattern that can be read', () => {
    expect(glossarySchema.safeParse({ unlock: { never: ['(let go'] } }).success).toBe(false);
  });
});
