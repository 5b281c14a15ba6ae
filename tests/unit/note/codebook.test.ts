/** Codebooks say of their nodes what the working guides say, whatever was frozen of it. */
import { describe, expect, it } from 'vitest';
import { guides, releases } from '../../../src/content/load.ts';
import type { Graph, GraphNode } from '../../../src/guide/types.ts';
import { codebookGuide, makeCodebooks } from '../../../src/note/codebook.ts';
import type { Release } from '../../../src/note/release.ts';
import { codebookOf, marks, workingRelease } from './codebooks.ts';

const told = ({ nodes, exits, flags, start }: Graph) => ({
  start,
  exits,
  flags,
  nodes: [...nodes.values()]
    .map(
      ({ id, guide, page, track, sentences, kind, urgency, heat, flag, answers }: GraphNode) => ({
        ...{ id, guide, page, track, sentences, kind, urgency, heat, flag, answers },
      }),
    )
    .toSorted((a, b) => a.id.localeCompare(b.id)),
});

/** As releases 1 to 4 were frozen. */
function withoutPlaces(release: Release): Release {
  return {
    ...release,
    guides: release.guides.map((guide) => ({
      ...guide,
      nodes: guide.nodes.map(({ page: _page, track: _track, ...node }) => node),
    })),
  };
}

describe('a codebook of the working guides', () => {
  it.each([
    ['with pages and tracks frozen', workingRelease()],
    ['without, as releases 1 to 4', withoutPlaces(workingRelease())],
  ])('says what they say, %s', (_, release) => {
    const codebook = codebookOf(makeCodebooks([release], marks));
    expect(guides().length).toBeGreaterThan(5);
    for (const guide of guides()) {
      const frozen = codebookGuide(codebook, guide.id);
      expect(frozen && told(frozen), guide.id).toEqual(told(guide));
    }
  });

  it('freezes the track of every question and step', () => {
    const open = workingRelease().guides.flatMap(({ nodes }) =>
      nodes.filter(({ answers }) => answers),
    );
    expect(open.length).toBeGreaterThan(150);
    expect(open.filter(({ track }) => track === undefined)).toEqual([]);
  });
});

describe('the frozen releases', () => {
  const nodes = [...makeCodebooks(releases(), marks).values()].flatMap((codebook) =>
    codebook.guides.flatMap((guide) =>
      [...guide.nodes.values()].map((node) => ({ node, release: codebook.release })),
    ),
  );
  const tracks = (id: string) => guides().find((guide) => guide.id === id)?.tracks ?? [];

  it('name a page otherwise than the node only where it is a copy on another track', () => {
    const copies = nodes.filter(({ node }) => node.id.replace(/^.*\//, '') !== node.page);
    expect(copies.length).toBeGreaterThan(100);
    for (const { node } of copies) {
      expect(tracks(node.guide).slice(1), node.id).toContain(node.track);
      expect(node.id.replace(/^.*\//, '')).toBe(`${node.page}-${String(node.track)}`);
    }
  });

  it.each([
    ['burner', 'near-el', 'near'],
    ['burner', 'wait-el', 'wait'],
    ['no-heat', 'fuel-blank', 'fuel'],
    ['no-heat', 'lock-key-gas', 'lock-key'],
    ['no-heat', 'settings-gas', 'settings'],
  ])('have %s/%s as a page of its own, though it borrows sentences', (guide, page, sentences) => {
    const found = nodes.filter(({ node }) => node.guide === guide && node.page === page);
    expect(found.length).toBeGreaterThan(0);
    for (const { node } of found)
      expect(String(node.sentences).replace(/^.*\//, '')).toBe(sentences);
  });

  it('know no flag, heat or track without marks', () => {
    const plain = [...makeCodebooks(releases()).values()].flatMap((codebook) =>
      codebook.guides.flatMap((guide) => [...guide.nodes.values()]),
    );
    expect(plain.length).toBe(nodes.length);
    for (const { heat, flag, answers } of plain)
      expect([heat, flag, answers.filter((one) => one.flag ?? one.heatEnded)]).toEqual([
        ...[false, undefined],
        [],
      ]);
  });
});
