import { expect, test } from 'vitest';
import { createCaller } from '../../../src/app/desk/caller.ts';
import { MOST_OVER, createCallList } from '../../../src/app/desk/calls.ts';

/** A tab's storage, and what it holds. */
function storage() {
  const held = new Map<string, string>();
  const keeper = {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, text: string) => void held.set(key, text),
    removeItem: (key: string) => void held.delete(key),
  };
  return { held, keeper };
}

test('what is about a caller is kept only where a keeper is given, and only for a reload', () => {
  const { held, keeper } = storage();
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

test('the last ten calls that are over stay in the tab, and all on hold', () => {
  const { held, keeper } = storage();
  const call = { hash: '', caller: { name: 'Ann' }, read: [], began: 1, at: 'Danger' };
  const calls = createCallList(keeper, true);
  for (let nth = 0; nth < 30; nth += 1) calls.put({ ...call, held: nth % 2 === 0, began: nth });
  const counts = (list: readonly { held: boolean }[]) => [
    list.filter((one) => one.held).length,
    list.filter((one) => !one.held).length,
  ];
  expect(counts(calls.list())).toEqual([15, MOST_OVER]);
  expect(calls.list()[0]?.began).toBe(29);
  const again = createCallList(keeper, false);
  expect(again.list()).toEqual(calls.list());
  expect(again.take(again.list()[0]?.id ?? 0)?.caller).toEqual({ name: 'Ann' });
  expect(again.list()).toHaveLength(24);
  expect(createCallList(keeper, true).list()).toEqual([]);
  // No text of a caller's is trusted to be one.
  const odd = JSON.stringify([{ ...again.list()[0], caller: { name: 7, phone: '555-0123' } }]);
  held.set('hobnote.desk.calls', odd);
  expect(createCallList(keeper, false).list()[0]?.caller).toEqual({ phone: '555-0123' });
  for (const text of ['{', '7', '[7, null, {"id": "x"}, {"caller": null}]']) {
    held.set([...held.keys()][0] ?? 'hobnote.desk.calls', text);
    expect(createCallList(keeper, false).list(), text).toEqual([]);
  }
});
