import { z } from 'zod';
import { groups } from '../../visit/staff-view.ts';
import type { Guide } from '../../guide/types.ts';

/** From low to high; an end that is null is not known. */
function band<T extends z.ZodType<number | null>>(end: T) {
  return z
    .tuple([end, end])
    .refine(([low, high]) => (low ?? -Infinity) < (high ?? Infinity), 'low is not below high');
}

/**
 * The shape of a guide's `preview.yaml`: only questions and steps that it has, only answers that
 * are given there.
 */
export function staffViewSchema(guide: Guide) {
  const open = [...guide.nodes.values()].filter(({ answers }) => answers.length > 0);
  const names = new Set<string>(open.map(({ sentences }) => sentences));
  const answers = new Set(
    open.flatMap(({ sentences, answers: own }) => own.map(({ id }) => `${sentences}.${id}`)),
  );
  const answer = z.string().refine((name) => answers.has(name), 'not an answer of this guide');
  return z.strictObject({
    groups: z.record(
      z.string().refine((name) => names.has(name), 'not a question or step of this guide'),
      z.enum(groups),
    ),
    miss: z
      .strictObject({
        set: z.record(answer, band(z.number())),
        readings: z.record(answer, band(z.number().nullable())),
      })
      .optional(),
  });
}
