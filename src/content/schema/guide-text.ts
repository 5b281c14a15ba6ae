import { z } from 'zod';
import { ownNodes } from '../../guide/ids.ts';
import type { Guide, GuideNode } from '../../guide/types.ts';
import { pageParts } from '../../proof/sentences.ts';
import type { NodeSentences, PartShape } from '../../proof/sentences.ts';

/**
 * What phone staff say in place of what the page says, to a caller who is on the line with the
 * firm; `call` in place of each line that sends the reader to the firm's telephone.
 */
export type DeskText = Omit<NodeSentences, 'short' | 'title'> & {
  readonly title?: string;
  readonly call?: string;
};

/** All sentences of one node. Parts that its kind lacks are absent. */
export type NodeText = NodeSentences & {
  readonly short: string;
  readonly title: string;
  readonly desk?: DeskText;
};

/** Parts with lines that may tell whom to call. */
const CALLING = ['now', 'lines'] as const;

/** Does an English line tell the reader to call the firm? "If it comes back, call" tells of later. */
const callsUs = (line: string): boolean =>
  /\bCall (?:\{\{firm\}\}|the technician)|\b[Cc]all a licensed technician/.test(line);

/**
 * A node's sentences as the desk says them.
 * @param english the same node's, in the language that tells which lines call the firm
 */
export function deskText({ desk = {}, ...own }: NodeText, english: NodeText): NodeText {
  const { call = '', answers, ...parts } = desk;
  const lines = CALLING.flatMap((part) => {
    const known = own[part];
    const said = known?.map((line, i) => (callsUs(english[part]?.[i] ?? '') ? call : line));
    return said === undefined ? [] : [[part, said] as const];
  });
  const all = { ...own.answers, ...answers };
  return {
    ...own,
    ...Object.fromEntries(lines),
    ...parts,
    ...(own.answers ? { answers: all } : {}),
  };
}

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
  const { short, ...said } = Object.fromEntries(parts) as z.core.$ZodShape;
  const page = { short, ...said, ...(node.answers.length > 0 ? { answers } : {}) };
  const desk = { ...page, short: z.never(), answers: answers.partial(), call: sentence };
  return z
    .strictObject({ ...page, desk: z.strictObject(desk).partial().optional() })
    .check(({ value, issues }) => {
      const text = value as unknown as NodeText;
      const calls = CALLING.some(
        (part) => text.desk?.[part] === undefined && text[part]?.some(callsUs),
      );
      if (calls === (text.desk?.call !== undefined)) return;
      const reason = calls
        ? 'the page tells the reader to call the firm, and the desk speaks to a caller: say what stands there'
        : 'no line of the page tells the reader to call the firm';
      issues.push({ code: 'custom', message: reason, path: ['desk'], input: value });
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
