import { describe, expect, it } from 'vitest';
import { loadGuide, loadShared } from '../../../src/guide/load.ts';
import type { NodeId } from '../../../src/guide/types.ts';

const sharedSource = `start: danger
nodes:
  danger:
    kind: question
    answers:
      fire: { to: stop-fire }
      unsure: { to: stop-fire }
  stop-fire: { kind: stop, danger: fire, urgency: emergency, call: [emergency], care: danger }
`;
const guideSource = `id: small
tracks: [a]
dangers: { none: look }
nodes:
  look:
    kind: question
    answers:
      seen: { to: done }
      unsure: { to: done }
  done: { kind: finish, urgency: none }
`;

const shared = (() => {
  const loaded = loadShared(sharedSource, 'shared.yaml');
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
})();

function guideOf(source: string) {
  const loaded = loadGuide(source, 'small.yaml', shared);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
}

describe('danger pages that guides share', () => {
  it('come first and last, and lead on to the guide by "none"', () => {
    const guide = guideOf(guideSource);
    expect([...guide.nodes.keys()]).toEqual(['danger', 'look', 'done', 'stop-fire']);
    expect(guide.start).toBe('danger');
    const answers = guide.nodes.get(guide.start)?.answers.map(({ id, to }) => `${id} ${to}`);
    expect(answers).toEqual(['fire stop-fire', 'unsure stop-fire', 'none look']);
    expect(guide.exits.map(({ id }) => String(id))).toEqual(['fire']);
  });

  it('say of "none" what is the same in every guide', () => {
    const asks = loadShared(
      sharedSource.replace('unsure: { to: stop-fire }', '$&\n      none: { confirm: true }'),
      'shared.yaml',
    );
    if (!asks.ok) throw new Error(JSON.stringify(asks.error));
    const loaded = loadGuide(guideSource, 'small.yaml', asks.value);
    if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
    const [, , none] = loaded.value.nodes.get(loaded.value.start)?.answers ?? [];
    expect(none).toMatchObject({ id: 'none', to: 'look', confirm: true });
  });

  it('give way to a page of the guide with the same name', () => {
    const own = `${guideSource}  stop-fire: { kind: stop, danger: fire, urgency: today, call: [technician] }\n`;
    expect(guideOf(own).nodes.get('stop-fire' as NodeId)?.urgency).toBe('today');
  });

  it('are left alone by a guide that does not ask for them', () => {
    const own = guideSource.replace('dangers: { none: look }', 'start: look');
    expect([...guideOf(own).nodes.keys()]).toEqual(['look', 'done']);
  });

  it.each([
    ['an unknown first page', 'none: look', 'none: lok', 'target-unknown', 18],
    ['no first page', '{ none: look }', '{}', 'key-missing', 1],
    ['a key too many', 'none: look', 'none: look, nnoe: look', 'key-unknown', 24],
  ])('have their troubles told at the place of "dangers": %s', (_, from, to, code, column) => {
    const loaded = loadGuide(guideSource.replace(from, to), 'small.yaml', shared);
    const found = loaded.ok ? [] : loaded.error.filter((one) => one.code === code);
    expect(found[0]?.place).toEqual({ line: 3, column });
    expect(found[0]?.file).toBe('small.yaml');
  });

  it('are checked by themselves, at the places of their own file', () => {
    const loaded = loadShared(
      sharedSource.replace('to: stop-fire', 'to: stop-fier'),
      'shared.yaml',
    );
    expect(loaded.ok ? [] : loaded.error).toContainEqual({
      ...{ code: 'target-unknown', node: 'danger', answer: 'fire', target: 'stop-fier' },
      ...{ file: 'shared.yaml', place: { line: 6, column: 19 } },
    });
  });
});
