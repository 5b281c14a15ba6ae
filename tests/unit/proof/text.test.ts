import { describe, expect, it } from 'vitest';
import { asksTooMuch } from '../../../src/proof/asks-too-much.ts';
import { prove } from '../../../src/proof/prove.ts';
import type { Verdict } from '../../../src/proof/prove.ts';
import type { PropertyId } from '../../../src/proof/property.ts';
import type { GuideSentences, NodeSentences } from '../../../src/proof/sentences.ts';
import type { Action, GuideNode, NodeId } from '../../../src/guide/types.ts';
import { trace } from '../../../src/journey/trace.ts';
import { gradeOf } from '../../../src/text/readability.ts';
import { realGuide, realSentences } from '../guide/support/real.ts';

const guide = realGuide();

function verdict(id: PropertyId, sentences: GuideSentences, of = guide): Verdict {
  const found = prove(of, { sentences, grade: gradeOf }).verdicts.find((one) => one.id === id);
  if (!found) throw new Error(id);
  return found;
}

function nodeOf(id: string): GuideNode {
  const node = guide.nodes.get(id as NodeId);
  if (!node) throw new Error(id);
  return node;
}

/** The sentences with those of one page changed. */
function changed(page: string, change: NodeSentences): GuideSentences {
  return { ...realSentences, [page]: { ...realSentences[page], ...change } };
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
    'Push the range’s breaker all the way to Off.',
    'Pull the oven door as lightly as on any day.',
    'Turn the oven knob to Off.',
    'Open the small door of the breaker panel and look.',
  ])('lets pass: %s', (sentence) => {
    expect(asksTooMuch(sentence)).toEqual([]);
  });

  it('is looked for in every step of the guide, in all it tells the reader to do', () => {
    for (const part of ['lines', 'care', 'help'] as const) {
      const { holds, counterExample } = verdict(
        'actions-listed',
        changed('lever', { [part]: ['Pry it up with a knife.'] }),
      );
      expect(holds).toBe(false);
      expect(counterExample?.fault).toMatchObject({
        code: 'asks-too-much',
        sentence: 'Pry it up with a knife.',
      });
      const { end, rest } = trace(guide, counterExample?.journey ?? []);
      expect([end.sentences, rest]).toEqual(['lever', []]);
    }
  });

  it('includes an action that is not on the closed list', () => {
    const knob = nodeOf('selector-set');
    const spoiled = { ...knob, action: 'pull-range-out' as Action };
    const other = { ...guide, nodes: new Map(guide.nodes).set(knob.id, spoiled) };
    expect(verdict('actions-listed', realSentences, other)).toMatchObject({
      holds: false,
      faults: [{ code: 'action-unlisted', node: 'selector-set', action: 'pull-range-out' }],
    });
  });
});

describe('a page’s sentences', () => {
  it.each<[string, string, NodeSentences]>([
    ['near.title', 'near', { title: undefined }],
    ['near.title', 'near', { title: '  ' }],
    ['near.why', 'near', { why: '' }],
    ['near.care', 'near', { care: [] }],
    ['near.answers.fan', 'near', { answers: { heat: 'Heat', quiet: 'None', unsure: 'Not sure' } }],
    ['wait.lines', 'wait', { lines: ['Wait.', ''] }],
    ['stop-book.now', 'stop-book', { now: undefined }],
    ['finish-open.lines', 'finish-open', { lines: [] }],
  ])('are missed: %s', (key, page, change) => {
    const { holds, faults } = verdict('sentences-plain', changed(page, change));
    expect(holds).toBe(false);
    expect(faults.map((fault) => 'key' in fault && fault.key)).toContain(key);
  });

  it('are missed when the whole page is', () => {
    const others = Object.fromEntries(
      Object.entries(realSentences).filter(([page]) => page !== 'near'),
    );
    expect(verdict('sentences-plain', others).holds).toBe(false);
  });

  it('are not missed when an answer has the name of something every object has', () => {
    const near = nodeOf('near');
    const [first, ...rest] = near.answers;
    if (!first) throw new Error('no answer');
    const answers = [{ ...first, id: 'constructor' as typeof first.id }, ...rest];
    const other = { ...guide, nodes: new Map(guide.nodes).set(near.id, { ...near, answers }) };
    expect(verdict('sentences-plain', realSentences, other).holds).toBe(false);
  });

  it('may not read above grade 6, neither alone nor behind short answers', () => {
    const hard =
      'Immediately discontinue operating the appliance whenever unidentifiable irregularities materialize.';
    const { holds, faults } = verdict(
      'sentences-plain',
      changed('near', { help: [hard, hard, hard] }),
    );
    expect(holds).toBe(false);
    expect(faults).toContainEqual(expect.objectContaining({ code: 'too-hard', node: 'near' }));
  });

  it('say at every stop what not to do', () => {
    const stops = [...guide.nodes.values()].filter(({ kind }) => kind === 'stop');
    expect(stops.length).toBeGreaterThan(15);
    // All of them at once: each is told of, and no other.
    const silent = Object.fromEntries(
      stops.map(({ sentences }) => [sentences, { ...realSentences[sentences], never: [] }]),
    );
    const { faults } = verdict('stops-call-and-warn', { ...realSentences, ...silent });
    const warnings = (ids: readonly GuideNode[]) =>
      new Set(ids.map(({ id }) => ({ code: 'nothing-warned', node: id })));
    expect(new Set(faults)).toEqual(warnings(stops));
    const one = verdict('stops-call-and-warn', changed('stop-book', { never: [] })).faults;
    expect(new Set(one)).toEqual(
      warnings(stops.filter(({ sentences }) => (sentences as string) === 'stop-book')),
    );
  });

  it('are not spoken of when there are none', () => {
    const ids = prove(guide).verdicts.map(({ id }) => id);
    expect(ids).toHaveLength(11);
    expect(ids).not.toContain('sentences-plain');
  });
});
