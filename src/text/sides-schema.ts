import { z } from 'zod';
import { flags, groups } from '../diagnosis/sides.ts';
import type { Guide } from '../guide/types.ts';

/**
 * The shape of a guide's `preview.yaml`: only questions and steps that it has, only answers that
 * are given there.
 */
export function sideSchema(guide: Guide) {
  const open = [...guide.nodes.values()].filter(({ answers }) => answers.length > 0);
  const names = new Set<string>(open.map(({ text }) => text));
  const answers = new Set(
    open.flatMap(({ text, answers: own }) => own.map(({ id }) => `${text}.${id}`)),
  );
  return z.strictObject({
    groups: z.record(
      z.string().refine((name) => names.has(name), 'not a question or step of this guide'),
      z.enum(groups),
    ),
    flags: z.record(
      z.string().refine((name) => answers.has(name), 'not an answer of this guide'),
      z.enum(flags),
    ),
  });
}
