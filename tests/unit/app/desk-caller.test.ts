import { expect, test } from 'vitest';
import { createCaller } from '../../../src/app/desk/caller.ts';

test('what is about a caller is kept only where a keeper is given, and only for a reload', () => {
  const held = new Map<string, string>();
  const keeper = {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, text: string) => void held.set(key, text),
    removeItem: (key: string) => void held.delete(key),
  };
  createCaller(undefined, true).set('name', 'Ann');
  expect(held.size).toBe(0);
  const first = createCaller(keeper, true);
  first.set('name', 'Ann');
  first.set('phone', '555-0123');
  const again = createCaller(keeper, false);
  expect([again.restored, again.caller()]).toEqual([true, { name: 'Ann', phone: '555-0123' }]);
  // A copied tab begins anew.
  expect(createCaller(keeper, true).caller()).toEqual({});
  expect(held.size).toBe(0);
  again.set('name', 'Ann');
  again.clear();
  expect(held.size).toBe(0);
});

test('a broken or blocked keeper is no harm', () => {
  const blocked = () => {
    throw new DOMException('no', 'SecurityError');
  };
  const state = createCaller({ getItem: blocked, setItem: blocked, removeItem: blocked }, false);
  state.set('name', 'Ann');
  expect([state.restored, state.caller()]).toEqual([false, { name: 'Ann' }]);
  const broken = [
    '{',
    '7',
    'null',
    '{"name":7,"constructor":"x"}',
    `{"name":"${'x'.repeat(999)}"}`,
  ];
  for (const text of broken) {
    const keeper = { getItem: () => text, setItem: () => undefined, removeItem: () => undefined };
    const { name = '', ...others } = createCaller(keeper, false).caller();
    expect(name.length, text).toBeLessThanOrEqual(80);
    expect(others).toEqual({});
  }
});
