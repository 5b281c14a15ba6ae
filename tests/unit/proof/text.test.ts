/** What sentences say: each part of a page read, each that is missing told of. */
import { describe, expect, it } from 'vitest';
import { asksTooMuch } from '../../../src/proof/asks-too-much.ts';
import { prove } from '../../../src/proof/prove.ts';
import type { NodeSentences } from '../../../src/proof/sentences.ts';
import { broken, guideOf, sound, step } from './broken.ts';
import type { Broken, Draft, Pages } from './broken.ts';

/** A sentence is a number, its own grade; of several, the mean. */
const plain = { short: '6', title: '6' };
const end = { ...plain, now: ['6'], never: ['6'] };
const texts: Readonly<Record<string, NodeSentences>> = {
  danger: { ...plain, why: '6', answers: { fire: '6', unsure: '6', none: '6' } },
  look: { ...plain, lines: ['6'], why: '6', answers: { unsure: '6', well: '6' } },
  ...{ 'stop-fire': end, 'stop-unsure': end },
  done: { ...plain, lines: ['6'], never: ['6'] },
};
const mean = (all: readonly string[]): number =>
  all.reduce((sum, one) => sum + (Number(one) || 0), 0) / all.length;

/** What fails where a page says something else, and is something else. */
function says(page: string, change: NodeSentences, draft: Draft = {}): Broken {
  const pages: Pages = { ...sound, look: step('look', { well: 'done' }) };
  const guide = guideOf({ ...pages, [page]: { ...pages[page], ...draft } });
  const sentences = { ...texts, [page]: { ...texts[page], ...change } };
  return broken(guide, { sentences, grade: mean });
}

describe('what a step may not ask for', () => {
  it.each([
    ['Use a screwdriver to lift the latch.', 'screwdriver'],
    ['Slide a coat hanger in.', 'coat hanger'],
    ['Check it with a multimeter.', 'multimeter'],
    ['Take off the back panel.', 'Take off the back panel'],
    ['Unscrew it.', 'Unscrew'],
    ['Pull the range out a bit.', 'Pull the range'],
    ['Then slide it forward.', 'slide it forward'],
    ['Unplug the range.', 'Unplug'],
    ['Move the red wire aside.', 'Move the red wire'],
    ['Force the hook back.', 'Force'],
    ['Lift it, and pry it open.', 'pry'],
    ['Pull hard on the door.', 'Pull hard'],
    ['Use a little force.', 'Use a little force'],
    // A negation reaches no further than its clause.
    ['Do not wait. Pry it open.', 'Pry'],
    ['Do not wait, but pry it open.', 'pry'],
    ['If it does not move, then force it.', 'force'],
    ['Do not wait; use a knife.', 'knife'],
    ['Do not wait, instead use a knife.', 'knife'],
    // Commands, wherever they begin.
    ['Lift it,pry it.', 'pry'],
    ['Lift it: pry it.', 'pry'],
    ['Lift it and  pry it.', 'pry'],
    ['Pull the door hard.', 'Pull the door hard'],
    // Words between, and more than one space.
    ['Push stove and all.', 'Push stove'],
    ['Pull  out  the  range.', 'Pull  out  the  range'],
    ['Roll  it  away.', 'Roll  it  away'],
    ['Lift with  force.', 'with  force'],
    ['Use a  little  force.', 'Use a  little  force'],
  ])('finds it in: %s', (sentence, words) => {
    expect(asksTooMuch(sentence).map((found) => found.words)).toContain(words);
  });

  it.each([
    'Do not force it.',
    'Don’t use a screwdriver, a knife or any other tool.',
    'Never pry, bend or hit the hook.',
    'Lift the handle without force.',
    'Never pull the range out to reach the plug.',
    'Do not touch a wire.',
    'You need no tools.',
    'Force bends it.',
    'Force  bends it.',
    'Marks of force show.',
    'You can’t use a tool.',
    'Use a cloth instead of a knife.',
    'Pull the oven  door.',
    'Push the range’s breaker all the way to Off.',
    'Pull the oven door as lightly as on any day.',
    'Turn the oven knob to Off.',
    'Open the small door of the breaker panel and look.',
  ])('lets pass: %s', (sentence) => {
    expect(asksTooMuch(sentence)).toEqual([]);
  });

  it.each<[string, readonly string[]]>([
    [
      'Use the %.',
      ['tool', 'screw driver', 'pliers', 'wrench', 'wrenches', 'hammer', 'drill', 'knives'].concat(
        ['scissors', 'scraper', 'chisel', 'saw', 'crowbar', 'crow bar', 'prybar', 'pry bar'],
        ['meter', 'voltmeter', 'ohmmeter'],
      ),
    ],
    ['Remove the small %.', ['cover', 'panel', 'plate', 'screw', 'bolt', 'trim', 'back', 'top']],
    ['Open the rear %.', ['cover', 'covers']],
    ['Cut a loose %.', ['wire', 'wiring', 'cable', 'cord', 'terminal']],
  ])('finds each word of its kind: %s', (sentence, words) => {
    for (const word of words)
      expect(asksTooMuch(sentence.replace('%', word)).map((found) => found.words)).toEqual([
        expect.stringMatching(new RegExp(`\\b${word}$`)),
      ]);
  });

  it('is looked for in every step of the guide, in all it tells the reader to do', () => {
    const said = 'Pry it up.';
    const found: Broken = {
      'actions-listed': ['danger.none', `asks-too-much look Pry ${said}`],
    };
    for (const part of ['title', 'why', 'callNote'] as const)
      expect(says('look', { [part]: said }), part).toEqual(found);
    for (const part of ['help', 'lines', 'now', 'never', 'care'] as const)
      expect(says('look', { [part]: ['0', said] }), part).toEqual(found);
    // What technicians read, and what the reader says.
    expect(says('look', { short: said, answers: { unsure: said, well: '6' } })).toEqual({});
    // A question asks for nothing to be done.
    expect(says('look', { title: said, help: [said] }, { kind: 'question' })).toEqual({});
  });

  it('is told with each sentence that asks for it', () => {
    expect(asksTooMuch('Wait. Pry it, then unscrew it! Use a saw.')).toEqual([
      { words: 'unscrew', sentence: 'Pry it, then unscrew it!' },
      { words: 'Pry', sentence: 'Pry it, then unscrew it!' },
      { words: 'saw', sentence: 'Use a saw.' },
    ]);
  });
});

describe('a page’s sentences', () => {
  it('are all there, at grade 6 at the most', () => {
    expect(says('look', {})).toEqual({});
    const guide = guideOf({ look: step('look', { well: 'done' }) });
    const { verdicts } = prove(guide, { sentences: texts, grade: mean });
    expect(verdicts).toHaveLength(12);
  });

  const missing = (page: string, ...keys: readonly string[]): Broken => {
    const ways = { danger: '', look: 'danger.none', done: 'danger.none look.unsure' };
    const journey = new Map(Object.entries(ways)).get(page) ?? 'danger.fire';
    return {
      'sentences-plain': [journey, ...keys.map((key) => `sentence-missing ${page} ${page}.${key}`)],
    };
  };
  const step6 = ['short', 'title', 'lines', 'why', 'answers.unsure', 'answers.well'];

  it.each<[string, Broken, string, NodeSentences, Draft?]>([
    ['a title', missing('look', 'title'), 'look', { title: undefined }],
    ['a title of spaces', missing('look', 'title'), 'look', { title: ' ' }],
    ['a reason', missing('look', 'why'), 'look', { why: '' }],
    ['a question’s reason', missing('danger', 'why'), 'danger', { why: '' }],
    ['a list', missing('look', 'lines'), 'look', { lines: [] }],
    ['one of a list', missing('look', 'lines'), 'look', { lines: ['6', ''] }],
    ['an answer', missing('look', 'answers.well'), 'look', { answers: { unsure: '6' } }],
    [
      'an empty answer',
      missing('look', 'answers.well'),
      'look',
      { answers: { unsure: '6', well: '' } },
    ],
    ['a box', missing('look', 'care'), 'look', {}, { caution: 'warning' }],
    [
      ...(['a question’s box', missing('look', 'care'), 'look', {}] as const),
      { kind: 'question', caution: 'notice' },
    ],
    ['no box of a stop', {}, 'stop-fire', {}, { caution: 'danger' }],
    ['what to do', missing('stop-fire', 'now'), 'stop-fire', { now: undefined }],
    ['what a finish says', missing('done', 'lines'), 'done', { lines: undefined }],
    ['what a finish warns of', missing('done', 'never'), 'done', { never: [' '] }],
  ])('are missed: %s', (_, expected, page, change, draft) => {
    expect(says(page, change, draft)).toEqual(expected);
  });

  it('are missed when the whole page is', () => {
    const guide = guideOf({ look: step('look', { well: 'done' }) });
    const without = (page: string): Broken => {
      const sentences = Object.fromEntries(Object.entries(texts).filter(([id]) => id !== page));
      return broken(guide, { sentences, grade: mean });
    };
    expect(without('look')).toEqual(missing('look', ...step6));
    expect(without('done')).toEqual(missing('done', 'short', 'title', 'lines', 'never'));
    expect(without('stop-fire')).toEqual({
      ...missing('stop-fire', 'short', 'title', 'now', 'never'),
      'stops-call-and-warn': ['danger.fire', 'nothing-warned stop-fire'],
    });
  });

  it('are not missed when an answer has the name of something every object has', () => {
    expect(says('look', {}, step('look', { constructor: 'done', well: 'done' }))).toEqual(
      missing('look', 'answers.constructor'),
    );
  });

  it('may not read above grade 6, neither alone nor behind short answers', () => {
    const hard = (grade: string): Broken => ({
      'sentences-plain': ['danger.none', `too-hard look ${grade} 6`],
    });
    expect(says('look', { help: ['6', '7'] })).toEqual(hard('6.2'));
    const easy = { unsure: '0', well: '0' };
    expect(says('look', { why: '7', answers: easy })['sentences-plain']?.[1]).toMatch(
      /^too-hard look 6\.33/,
    );
    expect(says('look', { answers: { unsure: '6', well: '11' } })).toEqual(hard('7'));
    expect(says('look', { why: '', help: ['90'] })['sentences-plain']).toEqual([
      ...['danger.none', 'sentence-missing look look.why', 'too-hard look 25.5 6'],
    ]);
  });

  it.each<[string, NodeSentences['never']]>([
    ['nothing', undefined],
    ['no line', []],
    ['an empty line', [' ']],
  ])('say at every stop what not to do: %s', (_, never) => {
    expect(says('stop-fire', { never })).toEqual({
      ...missing('stop-fire', 'never'),
      'stops-call-and-warn': ['danger.fire', 'nothing-warned stop-fire'],
    });
  });

  it('are not spoken of when there are none', () => {
    const ids = prove(guideOf({})).verdicts.map(({ id }) => id);
    expect(ids).toHaveLength(11);
    expect(ids).not.toContain('sentences-plain');
  });
});
