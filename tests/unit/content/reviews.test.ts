import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isMap, parseDocument } from 'yaml';
import { openContent } from '../../../src/content/content.ts';
import { content, guideText, guides, versionOf } from '../../../src/content/load.ts';
import { provedGuides } from '../../../src/content/proofs.ts';
import { guideVersion, signatures } from '../../../src/content/reviews.ts';
import { ownNodes } from '../../../src/guide/ids.ts';
import type { Answer, Guide, GuideNode, NodeId } from '../../../src/guide/types.ts';
import { copyOfContent, toldBy } from './copy.ts';

const all = guides();
/** A guide whose first answer has become another. */
function changed(guide: Guide, change: (answer: Answer) => Answer): Guide {
  const nodes = new Map<NodeId, GuideNode>(guide.nodes);
  const [node] = ownNodes(guide);
  if (!node) throw new Error(`${guide.id} has no pages`);
  const [first, ...rest] = node.answers;
  if (!first) throw new Error(`${node.id} has no answers`);
  nodes.set(node.id, { ...node, answers: [change(first), ...rest] });
  return { ...guide, nodes };
}

describe.each(all)('the version of $id', (guide) => {
  const text = guideText('en', guide);
  const version = guideVersion(guide, text);

  it('changes with a target, a flag, an order of answers and a sentence', () => {
    const retitled = { ...text, [guide.start]: { ...text[guide.start], title: 'Another' } };
    const versions = [
      guideVersion(
        changed(guide, (answer) => ({ ...answer, to: guide.start })),
        text,
      ),
      guideVersion(
        changed(guide, (answer) => ({ ...answer, flag: 'another' })),
        text,
      ),
      guideVersion(guide, retitled),
      version,
    ];
    expect(version).toMatch(/^[0-9a-f]{12}$/);
    expect(new Set(versions).size).toBe(versions.length);
  });

  it('is the one that `npm run prove` prints', () => {
    const proofs = provedGuides(content());
    const proved = proofs.ok ? proofs.value.find((one) => one.guide.id === guide.id) : undefined;
    expect(proved && guideVersion(proved.guide, proved.sentences)).toBe(versionOf(guide));
  });
});

describe('files', () => {
  let copy = copyOfContent();
  beforeEach(() => {
    copy = copyOfContent();
  });
  afterEach(() => {
    copy.done();
  });

  it('may be ordered and commented anew: the versions stay', () => {
    const { id } = all.find(({ tracks }) => tracks.length > 1) ?? all[0] ?? {};
    const graph = join(copy.folder, 'guides', String(id), 'graph.yaml');
    const before = readFileSync(graph, 'utf8');
    const document = parseDocument(before);
    const nodes = document.get('nodes');
    if (!isMap(nodes)) throw new Error('no nodes');
    nodes.items.reverse();
    for (const { value } of nodes.items) if (isMap(value)) value.items.reverse();
    document.commentBefore = ' Told anew.';
    writeFileSync(graph, String(document));
    const words = join(copy.folder, 'text/en', `${String(id)}.json`);
    const entries = Object.entries(JSON.parse(readFileSync(words, 'utf8')) as object).toReversed();
    writeFileSync(words, JSON.stringify(Object.fromEntries(entries)));

    const loaded = openContent(copy.folder).guides();
    const guide = loaded.ok ? loaded.value.find((one) => one.id === id) : undefined;
    const published = all.find((one) => one.id === id);
    if (!guide || !published) throw new Error(JSON.stringify(loaded));
    expect([...guide.nodes.keys()]).not.toEqual([...published.nodes.keys()]);
    const own = JSON.parse(readFileSync(words, 'utf8')) as Record<string, unknown>;
    const shared = JSON.parse(
      readFileSync(join(copy.folder, 'text/en/blocks.json'), 'utf8'),
    ) as Record<string, unknown>;
    expect(guideVersion(guide, { ...shared, ...own })).toBe(versionOf(published));
  });

  it.each([
    ['an earlier version of a known guide', String(all[0]?.id), '0123456789ab', ''],
    ['an unknown guide', 'no-such', '0123456789ab', '"no-such" is not in guides'],
    ['a version of another form', String(all[0]?.id), 'abc', 'hash has the wrong form'],
  ])('signs %s', (_, guide, hash, told) => {
    const review = { guide, hash, reviewer: 'Robin Doe', role: 'technician', date: '2026-01-31' };
    writeFileSync(join(copy.folder, 'reviews.yaml'), JSON.stringify([review]));
    const problems = [...toldBy('shape', copy.folder), ...toldBy('names', copy.folder)];
    expect(problems).toHaveLength(told === '' ? 0 : 1);
    expect(problems.join()).toContain(told);
  });
});

describe('signatures', () => {
  const review = { guide: 'a', reviewer: 'R', role: 'r', date: '2026-01-31' };

  it('count for the version they name, the newest first; others are stale', () => {
    const reviews = [
      { ...review, hash: 'old' },
      { ...review, hash: 'new', reviewer: 'first' },
      { ...review, hash: 'new', reviewer: 'second' },
      { ...review, guide: 'b', hash: 'new' },
    ];
    const { current, stale } = signatures(reviews, 'a', 'new');
    expect(current.map(({ reviewer }) => reviewer)).toEqual(['second', 'first']);
    expect(stale.map(({ hash }) => hash)).toEqual(['old']);
  });
});
