import { z } from 'zod';
import { ownNodes } from '../../guide/ids.ts';
import type { Guide, GuideNode } from '../../guide/types.ts';
import { pageParts } from '../../proof/sentences.ts';
import type { NodeSentences, PartShape } from '../../proof/sentences.ts';

/** All sentences of one node. Parts that its kind lacks are absent. */
export type NodeText = NodeSentences & { readonly short: string; readonly title: string };

const sentence = z.string().trim().min(1);
const sentences = z.array(sentence).min(1);
const shapes: Readonly<Record<PartShape, z.ZodType>> = {
  one: sentence,
  list: sentences,
  'one?': sentence.optional(),
  'list?': sentences.optional(),
};

function nodeShape(node: GuideNode): z.ZodType {
  const parts = Object.entries(pageParts(node)).map(([key, shape]) => [key, shapes[shape]]);
  const answers = z.strictObject(
    Object.fromEntries(node.answers.map((answer) => [answer.id, sentence])),
  );
  return z.strictObject({
    ...(Object.fromEntries(parts) as z.core.$ZodShape),
    ...(node.answers.length > 0 ? { answers } : {}),
  });
}

/**
 * The shape a guide's text must have: each of its own nodes' sentences and each answer's label,
 * no more and no less. Made from the graph, so that a new answer needs its label.
 */
export function guideTextSchema(guide: Guide): z.ZodType {
  return z.strictObject(
    Object.fromEntries(ownNodes(guide).map((node) => [node.sentences, nodeShape(node)])),
  );
}
