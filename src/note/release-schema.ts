/**
 * The shape of `content/releases/<n>.json`, checked wherever a release comes from a
 * file (build, command line, tests). Browsers get releases as trusted build output
 * and never load this. Issue messages are stable codes, not sentences.
 */
import { z } from 'zod';
import { qualifyOther, parseId } from '../guide/ids.ts';
import { depthFirst } from '../guide/loops.ts';
import { nodeKinds, urgencies } from '../guide/types.ts';
import type { PageMarks, Release, ReleaseGuide } from './release.ts';

const name = z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/);
/** A node of the same guide, or `guide/node`. */
const target = z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*(?:\/[a-z0-9]+(?:-[a-z0-9]+)*)?$/);
const answer = z.tuple([name, target]).readonly();

export const pageMarksSchema: z.ZodType<PageMarks> = z.strictObject({
  heat: z.literal(true).optional(),
  flag: name.optional(),
  answers: z
    .record(
      name,
      z.strictObject({ flag: name.optional(), heatEnded: z.number().min(0).optional() }),
    )
    .optional(),
});

const node = z.strictObject({
  id: name,
  page: name.optional(),
  track: name.optional(),
  text: name.optional(),
  kind: z.enum(nodeKinds),
  urgency: z.enum(urgencies).optional(),
  answers: z.array(answer).min(1).optional(),
  marks: pageMarksSchema.optional(),
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
    .refine((list) => unique(list.map(({ id }) => id)), 'repeated-guide')
    .superRefine((list, context) => {
      for (const problem of joinProblems(list))
        context.addIssue({ code: 'custom', message: problem.code, path: problem.path });
    }),
});

interface GraphProblem {
  readonly code:
    | 'repeated-node'
    | 'repeated-answer'
    | 'unknown-target'
    | 'unknown-start'
    | 'ends-with-answers'
    | 'open-without-answers'
    | 'unknown-mark'
    | 'exit-not-to-stop'
    | 'unknown-hand-over'
    | 'guide-circle'
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
    const here = list.filter(([, to]) => !to.includes('/'));
    if (!here.every(([, to]) => byId.has(to))) problems.push({ code: 'unknown-target', path });
  }
  for (const [i, { kind, answers = [], marks }] of nodes.entries()) {
    const ends = kind === 'stop' || kind === 'finish';
    if (ends && answers.length > 0)
      problems.push({ code: 'ends-with-answers', path: ['nodes', i] });
    if (!ends && answers.length === 0)
      problems.push({ code: 'open-without-answers', path: ['nodes', i] });
    const names = new Set(answers.map(([id]) => id));
    if (!Object.keys(marks?.answers ?? {}).every((id) => names.has(id)))
      problems.push({ code: 'unknown-mark', path: ['nodes', i, 'marks'] });
  }
  if (!exits.every(([, to]) => byId.get(to)?.kind === 'stop')) {
    problems.push({ code: 'exit-not-to-stop', path: ['exits'] });
  }
  if (depthFirst(byId.keys(), (id) => targetsOf(byId.get(id))).loops.length > 0)
    problems.push({ code: 'loop', path: ['nodes'] });
  return problems;
}

/** Where a node's answers lead. */
function targetsOf(value: ReleaseGuide['nodes'][number] | undefined): string[] {
  return value?.answers?.map(([, to]) => to) ?? [];
}

/** Answers that lead into another guide must find their node there, and no guide its way back. */
function joinProblems(guides: readonly ReleaseGuide[]): GraphProblem[] {
  const known = new Set(
    guides.flatMap(({ id, nodes }) => nodes.map((one) => qualifyOther(id, one.id))),
  );
  const leaving = new Map(
    guides.map(({ id, nodes }) => [id, nodes.flatMap(targetsOf).filter((to) => to.includes('/'))]),
  );
  const problems: GraphProblem[] = [];
  for (const [i, { id }] of guides.entries())
    if (!leaving.get(id)?.every((to) => known.has(to)))
      problems.push({ code: 'unknown-hand-over', path: [i] });
  const next = (id: string): string[] =>
    (leaving.get(id) ?? []).flatMap((to) => parseId(to).guide ?? []);
  if (depthFirst(leaving.keys(), next).loops.length > 0)
    problems.push({ code: 'guide-circle', path: [] });
  return problems;
}

function unique(values: readonly string[]): boolean {
  return new Set(values).size === values.length;
}
