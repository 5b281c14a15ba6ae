import { z } from 'zod';
import { actions, facts, helpers, signals, switches, urgencies } from './types.ts';

/** A name in a guide: it becomes a part of addresses and of the fragment. */
export const namePattern = /^(?!\d+$)[a-z0-9]+(-[a-z0-9]+)*$/;
const name = z.string().regex(namePattern);

/** One for all tracks, or one for each track. */
const byTrack = z.union([name, z.record(name, name)]);
/** A node of this guide, or `guide/node`. */
const target = z.string().regex(/^(?!\d+$)[a-z0-9]+(-[a-z0-9]+)*(\/[a-z0-9]+(-[a-z0-9]+)*)?$/);

export const answerSchema = z.strictObject({
  to: z.union([target, z.record(name, target)]),
  /** Of this guide; where the answer leads into another guide, of that one. */
  track: byTrack.optional(),
  sets: z.array(z.enum(facts)).default([]),
  clears: z.array(z.enum(facts)).default([]),
  /** One of `content/flags.yaml`. */
  flag: name.optional(),
  /** Minutes since the heat stopped that the answer stands for at least. */
  'heat-ended': z.number().min(0).max(1440).optional(),
  /** The page asks for a second tap, so that a slip does not go on. */
  confirm: z.boolean().default(false),
  drawing: name.optional(),
});

/** A length of time in minutes; more than a day is a slip of the pen. */
const timer = z.union([z.enum(['cooling', 'reach']), z.number().positive().max(1440)]);

const common = {
  text: name.optional(),
  care: z.enum(signals).optional(),
  drawing: name.optional(),
};
/** Answers are read one by one, so that one bad answer does not hide the others. */
const answers = z.record(name, z.unknown());

const question = z.strictObject({
  ...common,
  kind: z.literal('question'),
  only: name.optional(),
  timer: timer.optional(),
  'takes-error': z.boolean().default(false),
  answers,
});
const step = z.strictObject({
  ...question.shape,
  kind: z.literal('step'),
  action: z.enum(actions),
  heat: z.boolean().default(false),
});
const stop = z.strictObject({
  ...common,
  kind: z.literal('stop'),
  call: z.array(z.enum(helpers)).min(1),
  urgency: z.enum(urgencies),
  danger: name.optional(),
  'breaker-stays-off': z.boolean().default(false),
});
const finish = z.strictObject({
  ...common,
  kind: z.literal('finish'),
  urgency: z.enum(urgencies),
  /** The range is fine: use it as usual. */
  done: z.boolean().default(false),
});

/** One node in the authors' form; its answers are checked by `answerSchema`. */
export const nodeSchema = z.discriminatedUnion('kind', [question, step, stop, finish]);

/** What a node and an answer are checked by. */
export interface NodeForm {
  readonly node: z.ZodType<FileNode>;
  readonly answer: z.ZodType<FileAnswer>;
}
export const guideForm: NodeForm = { node: nodeSchema, answer: answerSchema };
/** In a block, which knows no guide's tracks. */
export const blockForm: NodeForm = {
  node: z.discriminatedUnion('kind', [
    question.omit({ only: true }),
    step.omit({ only: true }),
    stop,
    finish,
  ]),
  answer: answerSchema.omit({ track: true }).extend({ to: target }),
};

/** `page.answer`. */
const answerName = z.string().regex(/^[a-z0-9-]+\.[a-z0-9-]+$/);
export const ruleSchema = z.union([
  z.strictObject({ page: name, most: z.int().min(1).max(9) }),
  z.strictObject({ page: name, needs: answerName }),
  z.strictObject({ page: name, 'never-after': answerName, unless: answerName.optional() }),
  z.strictObject({ answer: answerName, 'ends-at': z.array(name).min(1) }),
]);

/** Where an exit of a block leads in a guide: an answer's `to`, or its `to` and `track`. */
const wiring = z.union([
  target.transform((to) => ({ to })),
  answerSchema.pick({ to: true, track: true }),
]);

/** A file of pages that guides share; nodes are read one by one with `blockForm`. */
export const blockSchema = z.strictObject({
  exits: z.array(name).default([]),
  rules: z.array(ruleSchema).default([]),
  nodes: z.record(name, z.unknown()),
});

/** The file as a whole; nodes are read one by one with `nodeSchema`. */
export const fileSchema = z.strictObject({
  id: name,
  tracks: z.array(name).min(1),
  start: name,
  /** Block → exit → how this guide goes on from it. */
  blocks: z.record(name, z.record(name, wiring)).default({}),
  /** Switch of `content/firm.yaml` → pages that are gone where it is off, and where to go instead. */
  optional: z
    .partialRecord(z.enum(switches), z.strictObject({ pages: z.array(name).min(1), instead: name }))
    .default({}),
  /** Nodes that answers of other guides may lead to. */
  entries: z.array(name).default([]),
  rules: z.array(ruleSchema).default([]),
  nodes: z.record(name, z.unknown()),
});

/** The safety flags, in the order staff see them. */
export const flagsSchema = z.array(name).min(1);

/** The optional details: answers in the order that is part of the note code. */
export const detailsSchema = z.record(name, z.array(name).min(2));

export type FileAnswer = z.infer<typeof answerSchema>;
export type FileOptional = z.infer<typeof fileSchema>['optional'];
export type FileWiring = z.infer<typeof fileSchema>['blocks'];
export type FileRule = z.infer<typeof ruleSchema>;
export type FileNode = z.infer<typeof nodeSchema>;
