import { expect, it } from 'vitest';
import { guides } from '../../../src/content/load.ts';
import { ownNodes, parseId } from '../../../src/guide/ids.ts';
import { stages, stagesOf } from '../../../src/site/stages.ts';

const all = guides();
const stageOf = stagesOf(all);
const asking = all.flatMap((guide) =>
  ownNodes(guide)
    .filter(({ answers }) => answers.length > 0)
    .map((node) => ({ guide, node, stage: stageOf(guide, node) })),
);
const found = (id: string, name: string) =>
  asking.find(({ guide, node }) => guide.id === id && node.id === name)?.stage;

it('every step is a check, and only a guide’s first question is about safety', () => {
  for (const { guide, node, stage } of asking) {
    if (node.kind === 'step') expect(stage, node.id).toBe('checks');
    expect(stage === 'safety', node.id).toBe(node.id === guide.start);
  }
  expect(new Set(asking.map(({ stage }) => stage))).toEqual(new Set(stages));
});

it('no answer leads to an earlier stage, in its own guide or another', () => {
  const back = asking.flatMap(({ guide, node, stage }) =>
    node.answers
      .filter(({ to }) => {
        const { guide: other = guide.id, name } = parseId(to);
        const next = found(other, name);
        return next !== undefined && stages.indexOf(next) < stages.indexOf(stage);
      })
      .map(({ id }) => `${guide.id}/${node.id}.${id}`),
  );
  expect(asking.length).toBeGreaterThan(300);
  expect(back).toEqual([]);
});

it('what is asked once there is nothing more to try is for the note', () => {
  expect(found('door-locked', 'since')).toBe('happened');
  expect(found('door-locked', 'opened')).toBe('note');
});
