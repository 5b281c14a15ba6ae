/**
 * The shape of `content/releases/<n>.json`, checked wherever a release comes from a
 * file (build, command line, tests). Browsers get releases as trusted build output
 * and never load this. Issue messages are stable codes, not sentences.
 */
import { z } from 'zod';
import { nodeKinds, urgencies } from '../guide/types.ts';
import type { Release, ReleaseGuide } from './release.ts';

const name = z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/);
const answer = z.tuple([name, name]).readonly();

const node = z.strictObject({
  id: name,
  text: name.optional(),
  kind: z.enum(nodeKinds),
  urgency: z.enum(urgencies).optional(),
  answers: z.array(answer).min(1).optional(),
});

const guide = z
  .strictObject({
    id: name,
    start: name,
    nodes: z.array(node).min(1),
    exits: z.array(answer),
  })
  .superRefine((value, context) => {
    for (const problem of graphProblems(value)) {
      context.addIssue({ code: 'custom', message: problem.code, path: problem.path });
    }
  });

const detail = z.strictObject({
  id: name,
  answers: z.array(name).min(1).refine(unique, 'repeated-answer'),
});

export const releaseSchema: z.ZodType<Release> = z.strictObject({
  release: z.int().min(1),
  published: z.iso.date(),
  details: z.array(detail).refine((list) => unique(list.map(({ id }) => id)), 'repeated-detail'),
  guides: z
    .array(guide)
    .min(1)
    .refine((list) => unique(list.map(({ id }) => id)), 'repeated-guide'),
});

interface GraphProblem {
  readonly code:
    | 'repeated-node'
    | 'repeated-answer'
    | 'unknown-target'
    | 'unknown-start'
    | 'ends-with-answers'
    | 'open-without-answers'
    | 'exit-not-to-stop'
    | 'loop';
  readonly path: (string | number)[];
}

/** What would keep `makeLibrary` from counting a guide's journeys, or counting them twice. */
function graphProblems({ start, nodes, exits }: ReleaseGuide): GraphProblem[] {
  const problems: GraphProblem[] = [];
  const byId = new Map(nodes.map((value) => [value.id, value]));
  if (byId.size < nodes.length) problems.push({ code: 'repeated-node', path: ['nodes'] });
  if (!byId.has(start)) problems.push({ code: 'unknown-start', path: ['start'] });
  const lists = [...nodes.map(({ answers }) => answers ?? []), exits];
  for (const [i, list] of lists.entries()) {
    const path = i < nodes.length ? ['nodes', i, 'answers'] : ['exits'];
    if (!unique(list.map(([id]) => id))) problems.push({ code: 'repeated-answer', path });
    if (!list.every(([, to]) => byId.has(to))) problems.push({ code: 'unknown-target', path });
  }
  for (const [i, { kind, answers }] of nodes.entries()) {
    const ends = kind === 'stop' || kind === 'finish';
    if (ends && answers) problems.push({ code: 'ends-with-answers', path: ['nodes', i] });
    if (!ends && !answers) problems.push({ code: 'open-without-answers', path: ['nodes', i] });
  }
  if (!exits.every(([, to]) => byId.get(to)?.kind === 'stop')) {
    problems.push({ code: 'exit-not-to-stop', path: ['exits'] });
  }
  if (loops(nodes)) problems.push({ code: 'loop', path: ['nodes'] });
  return problems;
}

/** Kahn's algorithm: take away nodes nothing leads to until none is left, or only loops are. */
function loops(nodes: ReleaseGuide['nodes']): boolean {
  const into = new Map(nodes.map(({ id }) => [id, 0]));
  const targets = new Map(
    nodes.map(({ id, answers }) => [id, (answers ?? []).map(([, to]) => to)]),
  );
  for (const to of [...targets.values()].flat()) into.set(to, (into.get(to) ?? 0) + 1);
  const free = [...into.keys()].filter((id) => into.get(id) === 0);
  let taken = 0;
  for (let id = free.pop(); id !== undefined; id = free.pop()) {
    taken += 1;
    for (const to of targets.get(id) ?? []) {
      const left = (into.get(to) ?? 0) - 1;
      into.set(to, left);
      if (left === 0) free.push(to);
    }
  }
  return taken < into.size;
}

function unique(values: readonly string[]): boolean {
  return new Set(values).size === values.length;
}
