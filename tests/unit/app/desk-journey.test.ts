import { createRoot } from 'solid-js';
import { expect, test } from 'vitest';
import { answerKeys } from '../../../src/app/desk/keys.ts';
import { createJourney, type DeskStatus } from '../../../src/app/desk/journey.ts';
import { makeWords } from '../../../src/app/shared/words.ts';
import { guides, guideText } from '../../../src/content/load.ts';
import type { Given } from '../../../src/guide/types.ts';
import { codebookGuide } from '../../../src/note/codebook.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import { codebookOf, working } from '../note/codebooks.ts';

const own = guides().find(({ id }) => id === 'door-locked') ?? expect.fail('no such guide');
const book = codebookGuide(codebookOf(working), own.id) ?? expect.fail('not in the book');
const words = makeWords({ language: 'en', texts: { [own.id]: guideText('en', own) } });

/** A store, what it said last, and how many answers it told of. */
function desk() {
  const heard: { told?: DeskStatus | undefined; answers: number } = { answers: 0 };
  const journey = createRoot(() =>
    createJourney(
      words,
      book,
      (told) => (heard.told = told),
      () => (heard.answers += 1),
    ),
  );
  return { journey, heard };
}

test('keys pressed give the journey shown, wherever the caller may come', () => {
  const random = seeded(20261127);
  const met = new Set<string>();
  for (let call = 0; call < 600; call++) {
    const { journey, heard } = desk();
    const pressed: Given[] = [];
    for (let at = own.start; ;) {
      const node = own.nodes.get(at) ?? expect.fail(at);
      met.add(at);
      expect(journey.node().id).toBe(at);
      if (node.answers.length === 0) break;
      // In the order of the guide's file; on 0 what every question has.
      const known = node.answers.filter(({ id }) => id !== 'unsure');
      const place = Math.floor(random() * (known.length + 1));
      const key = place === known.length ? '0' : (answerKeys[place] ?? expect.fail(at));
      const edge = known[place] ?? node.answers.find(({ id }) => id === 'unsure');
      if (!edge) return expect.fail(at);
      if (journey.mustRead()) {
        journey.press(key);
        expect(heard.told?.key).toBe('desk:status.careFirst');
        journey.tick();
      }
      journey.press(key);
      pressed.push({ at, answer: edge.id });
      expect(journey.edited().journey).toEqual(pressed);
      at = edge.to;
    }
    expect(heard.answers).toBe(pressed.length);
    expect(journey.view()).toEqual({ kind: 'at', index: pressed.length });
  }
  expect(met.size).toBeGreaterThan(50);
});

test('an answer changed in the middle keeps what fits, and says how much', () => {
  const { journey, heard } = desk();
  journey.go(1);
  expect(journey.view().kind, 'nothing comes before the danger question').toBe('danger');
  for (const answer of ['none', 'overnight', 'time']) journey.choose(answer);
  journey.go(-5);
  expect([journey.view(), journey.present()]).toEqual([{ kind: 'at', index: 0 }, 'none']);
  journey.go(1);
  expect([journey.node().id, journey.present()]).toEqual(['since', 'overnight']);
  journey.choose('overnight');
  expect(heard.told).toEqual({ key: 'desk:status.kept', facts: { count: 1 } });
  expect(journey.view()).toEqual({ kind: 'at', index: 3 });
  journey.press('9');
  expect(heard.told).toEqual({ key: 'desk:status.noAnswer', facts: { nth: '9' } });
});

test('a call taken over asks about danger first, and danger leads out from where it stands', () => {
  const { journey, heard } = desk();
  const before = [
    ['danger', 'none'],
    ['since', 'overnight'],
  ].map(([at, answer]) => ({ at, answer }) as Given);
  expect(journey.open(before)).toBe(true);
  expect([journey.view().kind, journey.length()]).toEqual(['danger', 2]);
  journey.show('code', 'ABCD');
  expect(journey.view()).toEqual({ kind: 'code', given: 'ABCD' });
  journey.press('1');
  journey.show('now');
  expect([journey.view().kind, heard.answers]).toEqual(['danger', 0]);
  journey.choose('none');
  expect([journey.view(), heard.answers]).toEqual([{ kind: 'at', index: 2 }, 0]);
  journey.show('danger');
  journey.choose('fire');
  expect(journey.edited().journey.map(({ answer }) => answer)).toEqual([
    'none',
    'overnight',
    'fire',
  ]);
  expect(journey.node().urgency).toBe('emergency');
  expect(journey.open([{ ...(before[0] as Given), answer: 'no-such' as never }])).toBe(false);
  expect(journey.length()).toBe(0);
});
