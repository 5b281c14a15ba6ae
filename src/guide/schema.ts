import { z } from 'zod';
import { actions, facts, helpers, signals, urgencies } from './types.ts';

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
});

/** A length of time in minutes; more than a day is a slip of the pen. */
const timer = z.union([z.literal('cooling'), z.number().positive().max(1440)]);

const common = {
  text: name.optional(),
  care: z.enum(signals).optional(),
  drawing: name.optional(),
};
/** Answers are read one by one, so that one bad answer does not hide the others. */
const answers = z.record(name, z.unknown());

/** One node in the authors' form; its answers are checked by `answerSchema`. */
export const nodeSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    ...common,
    kind: z.literal('question'),
    only: name.optional(),
    timer: timer.optional(),
    'takes-error': z.boolean().default(false),
    answers,
  }),
  z.strictObject({
    ...common,
    kind: z.literal('step'),
    action: z.enum(actions),
    heat: z.boolean().default(false),
    only: name.optional(),
    timer: timer.optional(),
    'takes-error': z.boolean().default(false),
    answers,
  }),
  z.strictObject({
    ...common,
    kind: z.literal('stop'),
    call: z.array(z.enum(helpers)).min(1),
    urgency: z.enum(urgencies),
    danger: name.optional(),
    'breaker-stays-off': z.boolean().default(false),
  }),
  z.strictObject({ ...common, kind: z.literal('finish'), urgency: z.enum(urgencies) }),
]);

/** `page.answer`. */
const answerName = z.string().regex(/^[a-z0-9-]+\.[a-z0-9-]+$/);
export const ruleSchema = z.union([
  z.strictObject({ page: name, most: z.int().min(1).max(9) }),
  z.strictObject({ page: name, needs: answerName }),
  z.strictObject({ page: name, 'never-after': answerName }),
  z.strictObject({ answer: answerName, 'ends-at': z.array(name).min(1) }),
]);

/** The file as a whole; nodes are read one by one with `nodeSchema`. */
export const fileSchema = z.strictObject({
  id: name,
  tracks: z.array(name).min(1),
  start: name,
  /** Takes the shared danger pages; `none` leads to this guide's own first page. */
  dangers: z.strictObject({ none: name }).optional(),
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
export type FileRule = z.infer<typeof ruleSchema>;
export type FileNode = z.infer<typeof nodeSchema>;
