import { describe, expect, it } from 'vitest';
import { cleanCooling } from '../../../src/physics/cooldown.ts';
import type { GuideNode, NodeId } from '../../../src/guide/types.ts';
import { loadGuide } from '../../../src/guide/load.ts';
import { realGuide } from './support/real.ts';
import { edited } from './support/small.ts';

describe('loadGuide on the published file', () => {
  const guide = realGuide();
  const node = (id: string): GuideNode | undefined => guide.nodes.get(id as NodeId);

  it('makes one copy of a node for each track it is reached on', () => {
    expect(['inside', 'inside-calm', 'inside-cold'].map((id) => node(id)?.sentences)).toEqual(
      Array(3).fill('inside'),
    );
    // An error moves to the track `cold`, so nobody on `open` copies one.
    expect(node('error-write')).toBeUndefined();
    expect(node('error-write-cold')?.takesError).toBe(true);
    // Stops are shared by all tracks.
    expect(node('stop-fire-cold')).toBeUndefined();
  });

  it('moves tracks before it looks up the target', () => {
    const blank = node('display')?.answers.find(({ id }) => id === 'blank');
    expect(blank?.to).toBe('house-power-cold');
    const never = node('since')?.answers.find(({ id }) => id === 'never');
    expect(never?.to).toBe('near-calm');
  });

  it('keeps the order of the file, copies in the order of the tracks', () => {
    const ids = [...guide.nodes.keys()] as string[];
    expect(ids[0]).toBe('danger');
    expect(ids.filter((id) => id.startsWith('inside'))).toEqual([
      'inside',
      'inside-calm',
      'inside-cold',
    ]);
    expect(ids.indexOf('inside-cold')).toBeLessThan(ids.indexOf('forced'));
  });

  it('takes the danger answers for exits, but not "unsure"', () => {
    expect(guide.exits.map(({ id }) => String(id))).toEqual(
      'fire pan-fire gas ill sparks runaway glass burned trapped'.split(' '),
    );
  });

  it('reads timers in minutes, the cooling one as the window of physics', () => {
    const window = [cleanCooling.earliest, cleanCooling.latest];
    expect(node('wait')?.timer).toEqual({ kind: 'cooling', minutes: window });
    expect(node('breaker-off')?.timer).toEqual({ kind: 'fixed', minutes: [5, 5] });
  });

  it('shares sentences between nodes where the file says so', () => {
    expect(node('try-last')?.sentences).toBe('try-again');
  });
});

describe('an answer that asks for a second tap', () => {
  it('does so on every track, and no other answer does', () => {
    const loaded = loadGuide(
      edited('moved: { to: ask, track: b }', 'moved: { to: ask, track: b, confirm: true }'),
      'small.yaml',
    );
    if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
    const asking = [...loaded.value.nodes.values()].flatMap(({ id, answers }) =>
      answers.filter(({ confirm }) => confirm).map((answer) => `${id}.${answer.id}`),
    );
    expect(asking).toEqual(['look.moved']);
  });
});
