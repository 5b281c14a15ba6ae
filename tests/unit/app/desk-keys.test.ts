import { expect, test } from 'vitest';
import { actionOf, isField, isPressable, letters } from '../../../src/app/desk/keys.ts';
import type { Pressed } from '../../../src/app/desk/keys.ts';
import { guideOf, working } from '../note/codebooks.ts';

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
  expect(press('7')).toEqual({ do: 'answer', nth: 7 });
  for (const key of ['0', '?']) expect(press(key)).toEqual({ do: 'unsure' });
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

test('every question and step has at most nine answers besides "not sure", so each has its key', () => {
  const open = [...guideOf(working).nodes.values()].filter(({ answers }) => answers.length > 0);
  expect(open.length).toBeGreaterThan(40);
  for (const { id, answers } of open) {
    expect(
      answers.map((answer) => String(answer.id)),
      id,
    ).toContain('unsure');
    expect(answers.length - 1, id).toBeLessThanOrEqual(9);
  }
});
