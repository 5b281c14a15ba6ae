import { describe, expect, it } from 'vitest';
import { content, guides, guideText } from '../../../src/content/load.ts';
import { spokenGrade } from '../../../src/content/proofs.ts';
import { SOURCE, ownerTexts } from '../../../src/content/texts.ts';
import { sentencesIn } from '../../../src/text/glossary.ts';
import { count, grade, gradeOf, hardest, sentencesOf } from '../../../src/text/readability.ts';

describe('readability', () => {
  it('counts words, sentences and syllables as a reader would', () => {
    // By hand: The-cat-sat (3), It-was-warm (3).
    expect(count(['The cat sat. It was warm.'])).toEqual({
      words: 6,
      sentences: 2,
      syllables: 6,
    });
    // The-shut-o-ven-is-hot (6), do-not-o-pen-it (5).
    expect(count(['The shut oven is hot.', 'Do not open it'])).toEqual({
      words: 9,
      sentences: 2,
      syllables: 11,
    });
  });

  it('ends a sentence with its passage, with or without a full stop', () => {
    expect(sentencesOf(['Wait', 'Then look! Is it hot?', '', ' … '])).toEqual([
      'Wait',
      'Then look!',
      'Is it hot?',
    ]);
  });

  it('does not end a sentence inside a number', () => {
    expect(sentencesOf(['It takes 1.5 hours to cool.'])).toHaveLength(1);
  });

  it('keeps a contraction one word', () => {
    expect(count(["Don't pull, don’t push."])).toMatchObject({ words: 4, sentences: 1 });
  });

  it('reads figures out digit by digit', () => {
    expect(count(['Call 911.'])).toEqual({ words: 2, sentences: 1, syllables: 4 });
  });

  it('grades passages together, by the formula', () => {
    const { words, sentences, syllables } = count(['The shut oven is hot.', 'Do not open it']);
    expect(gradeOf(['The shut oven is hot.', 'Do not open it'])).toBe(
      grade(words, sentences, syllables),
    );
    expect(gradeOf([])).toBe(-Infinity);
  });

  it('puts hard writing above grade 6 and plain writing below', () => {
    expect(
      gradeOf([
        'Discontinue operation of the appliance immediately and contact an authorized representative.',
      ]),
    ).toBeGreaterThan(12);
    expect(gradeOf(['Turn the oven off. Call us at once. Stay out of the room.'])).toBeLessThan(3);
  });

  it('lists the hardest sentences first, each once, and none of a word or two', () => {
    const listed = hardest(
      [
        'Electricity.',
        'Turn all of it off. Authorized technicians investigate electricity.',
        'Turn all of it off.',
        'Then wait for the oven to cool.',
      ],
      2,
    );
    expect(listed.map(({ sentence }) => sentence)).toEqual([
      'Authorized technicians investigate electricity.',
      'Then wait for the oven to cool.',
    ]);
    expect(listed[0]?.grade).toBeGreaterThan(listed[1]?.grade ?? NaN);
  });
});

describe('a page for readers that is in no guide', () => {
  it.each(ownerTexts)('%s reads at grade 9 or lower in English (WCAG 3.1.5)', (name) => {
    const text = content().text(`text/${SOURCE}/${name}.json`);
    if (!text.ok) throw new Error(name);
    const { topics = { all: text.value.value } } = text.value.value as { topics?: object };
    for (const part of Object.values(topics) as unknown[])
      expect(spokenGrade(sentencesIn(part).map(([, sentence]) => sentence))).toBeLessThanOrEqual(9);
  });
});

/** Verbs of what hands do, at the beginning of a sentence; plain-language practice, no source. */
const DEEDS =
  /^(?:then |first |next time,? |when [^,]*, |once [^,]*, |with [^,]*, |tomorrow, )*(?:bake|call|center|change|clear|close|copy|cover|fill|get|heat|hold|lift|lower|move|open|press|pull|push|put|raise|remove|rinse|set|shut|slide|spray|start|take|throw|turn|unplug|wipe|write)\b/i;
/** A line with a condition tells of one deed or the other; wiping is done when all is clean. */
const deedsIn = (line: string): number =>
  /^If |\?|Wipe again/.test(line) ? 1 : sentencesOf([line]).filter((one) => DEEDS.test(one)).length;

describe('a numbered line', () => {
  it('asks for one deed', () => {
    const lines = guides().flatMap((guide) =>
      Object.entries(guideText(SOURCE, guide)).flatMap(([page, { now = [], lines: all = [] }]) =>
        [...now, ...all].map((line) => `${page}: ${line}`),
      ),
    );
    expect(lines.length).toBeGreaterThan(200);
    expect(
      [...new Set(lines)].filter((line) => deedsIn(line.slice(line.indexOf(': ') + 2)) > 1),
    ).toEqual([]);
  });

  it.each([
    ['Press Off. Turn the knobs to Off.', 2],
    ['Push the door shut. Then pull the handle gently.', 2],
    ['Turn that breaker off. Leave it off.', 1],
    ['Call us. Say what you saw.', 1],
  ])('is seen to ask for as many: %s', (line, deeds) => {
    expect(deedsIn(line)).toBe(deeds);
  });
});
