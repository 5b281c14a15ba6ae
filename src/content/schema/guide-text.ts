import { z } from 'zod';
import { ownNodes } from '../../guide/ids.ts';
import type { Guide, GuideNode, NodeKind } from '../../guide/types.ts';

const sentence = z.string().trim().min(1);
const sentences = z.array(sentence).min(1);
const common = {
  short: sentence.describe('A noun phrase for the technician’s list; no full stop.'),
  title: sentence.describe('The page’s heading. A question asks; a step commands.'),
  care: sentences.optional().describe('The caution box. The signal word is added.'),
};
const shapes = {
  question: {
    ...common,
    help: sentences.optional().describe('How to find the answer, before the answers.'),
    why: sentence.describe('Why we ask: shown when the reader opens it.'),
  },
  step: {
    ...common,
    lines: sentences.describe('What to do, in order, one act a line.'),
    why: sentence.describe('Why it helps: shown when the reader opens it.'),
  },
  stop: {
    ...common,
    callNote: sentence.optional().describe('When or from where to call; stands by the number.'),
    now: sentences.describe('What to do now, in order.'),
    never: sentences.describe('What not to do. Each begins with “Do not”.'),
  },
  finish: {
    ...common,
    lines: sentences.describe('What to do now that the door is open.'),
    never: sentences.describe('What not to do. Each begins with “Do not”.'),
  },
} satisfies Record<NodeKind, z.core.$ZodShape>;

/** All sentences of one node. Parts that its kind lacks are absent. */
export interface NodeText {
  readonly short: string;
  readonly title: string;
  readonly care?: readonly string[];
  readonly help?: readonly string[];
  readonly lines?: readonly string[];
  readonly why?: string;
  readonly callNote?: string;
  readonly now?: readonly string[];
  readonly never?: readonly string[];
  readonly answers?: Readonly<Record<string, string>>;
}

function nodeShape(node: GuideNode): z.ZodType {
  const shape: Record<string, z.core.$ZodType> = { ...shapes[node.kind] };
  if (node.answers.length > 0)
    shape['answers'] = z.strictObject(
      Object.fromEntries(node.answers.map((answer) => [answer.id, sentence])),
    );
  if (node.care && (node.kind === 'question' || node.kind === 'step')) shape['care'] = sentences;
  return z.strictObject(shape);
}

/**
 * The shape a guide's text must have in every language: each of its own nodes' sentences
 * and each answer's label, no more and no less. Made from the graph, so that a new
 * answer without its label fails the build.
 */
export function guideTextSchema(guide: Guide): z.ZodType<Record<string, NodeText>> {
  const shape: Record<string, z.ZodType> = {};
  for (const node of ownNodes(guide)) shape[node.sentences] = nodeShape(node);
  return z.strictObject(shape) as unknown as z.ZodType<Record<string, NodeText>>;
}
