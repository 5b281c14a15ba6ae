import { describe, expect, it } from 'vitest';
import { guides } from '../../../src/content/load.ts';
import { ownNodes } from '../../../src/guide/ids.ts';
import { boxOf, mapOf } from '../../../src/guide/map.ts';

const edge = (from: string, track: string | undefined, answer: string, to: string) =>
  `${from} ${track ?? ''} ${answer} → ${to}`;

describe.each(guides())('the map of $id', (guide) => {
  const { boxes, arrows, exits } = mapOf(guide);
  const own = ownNodes(guide);

  it('has the edges of the compiled graph, on the same tracks, and no other', () => {
    const compiled = own.flatMap(({ page, track, answers }) =>
      answers.map(({ id, to }) => {
        const target = guide.nodes.get(to);
        return edge(page, track, id, target ? boxOf(guide, target) : 'nowhere');
      }),
    );
    const told = [...arrows, ...exits].flatMap(({ from, to, ways }) =>
      ways.flatMap(({ answer, tracks }) => {
        const all = own.filter(({ page }) => page === from).map(({ track }) => track);
        return (tracks.length > 0 ? tracks : all).map((track) => edge(from, track, answer.id, to));
      }),
    );
    expect(compiled.length).toBeGreaterThan(0);
    expect(told.toSorted()).toEqual(compiled.toSorted());
  });

  it('has one box a page, one arrow from a page to a place, and the danger answers apart', () => {
    const pages = own.map(({ page }) => page);
    const led = arrows.map(({ to }) => to);
    expect(new Set(boxes.keys())).toEqual(new Set([...pages, ...led]));
    expect(new Set(arrows.map(({ from, to }) => `${from} ${to}`)).size).toBe(arrows.length);
    expect(exits.flatMap(({ ways }) => ways.map(({ answer }) => answer.id))).toEqual(
      guide.exits.map(({ id }) => id),
    );
  });

  it('leaves words out only where all answers of the page lead to one place', () => {
    for (const { from, every } of arrows) {
      const all = [...arrows, ...exits].filter((other) => other.from === from);
      expect(every, from).toBe(all.length === 1);
    }
  });
});
