import { expect, test } from 'vitest';
import { actionOf, answerKeys, isField, isPressable, letters } from '../../../src/app/desk/keys.ts';
import type { Pressed } from '../../../src/app/desk/keys.ts';
import { choicesOf } from '../../../src/app/desk/nodes.ts';
import { codebookOf, working } from '../note/codebooks.ts';

const press = (key: string, more: Partial<Pressed> = {}) =>
  actionOf({
    key,
    code: '',
    ctrlKey: false,
    metaKey: false,
    altKey: false,
    isComposing: false,
    ...more,
  });

test('every key does one thing, and no letter two', () => {
  const all = Object.values(letters);
  expect(new Set(all).size).toBe(all.length);
  for (const [action, letter] of Object.entries(letters)) {
    expect(press(letter)).toEqual({ do: action });
    // With Caps Lock, and on a board of another script.
    expect(press(letter.toUpperCase())).toEqual({ do: action });
    expect(press('ф', { code: `Key${letter.toUpperCase()}` })).toEqual({ do: action });
  }
  for (const key of [...'123456789', '-']) expect(press(key)).toEqual({ do: 'answer', key });
  expect(press('0')).toEqual({ do: 'unsure' });
  expect(press('?')).toEqual({ do: 'keys' });
});

test('the browser keeps its own keys', () => {
  for (const key of ['Tab', 'F5', 'Home', 'constructor', 'q', 'Dead', ''])
    expect(press(key), key).toBeUndefined();
  for (const held of ['ctrlKey', 'metaKey', 'altKey', 'isComposing'] as const)
    expect(press('d', { [held]: true }), held).toBeUndefined();
  expect(['TEXTAREA', 'SELECT'].every((tag) => isField(tag, ''))).toBe(true);
  expect([isField('INPUT', 'text'), isField('INPUT', 'checkbox')]).toEqual([true, false]);
  expect([isPressable('BUTTON'), isPressable('H2')]).toEqual([true, false]);
});

test('every answer of every question and step has a key of its own, "not sure" always 0', () => {
  const { guides } = codebookOf(working);
  const open = guides.flatMap(({ nodes }) =>
    [...nodes.values()].filter(({ answers }) => answers.length > 0),
  );
  expect(open.length).toBeGreaterThan(300);
  for (const node of open) {
    const choices = choicesOf(node);
    const keys = choices.map(({ key }) => key);
    expect(choices.map(({ edge }) => String(edge.id)).toSorted(), node.id).toEqual(
      node.answers.map(({ id }) => String(id)).toSorted(),
    );
    expect(new Set(keys).size, node.id).toBe(keys.length);
    for (const { edge, key } of choices)
      expect(press(key), `${node.id}.${edge.id}`).toEqual(
        String(edge.id) === 'unsure' ? { do: 'unsure' } : { do: 'answer', key },
      );
    expect(keys.at(-1), node.id).toBe('0');
  }
  const [door] = guides;
  const none = choicesOf(door?.first ?? expect.fail('no guide')).find(
    ({ edge }) => String(edge.id) === 'none',
  );
  expect(none?.key, 'no danger, the answer that goes on').toBe(answerKeys.at(-1));
});
