import { z } from 'zod';

const name = z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/);

/** `content/finder.yaml`: what an owner would say, and the guide it leads to. */
export const finderSchema = z.strictObject({
  /** The guide with the big button, whose danger list stands on pages of no guide. */
  main: name,
  groups: z
    .array(
      z.strictObject({
        id: name,
        sayings: z
          .array(
            z.strictObject({
              id: name,
              guide: name,
              /** The answer to the guide's first question that the saying gives, `page.answer`. */
              answer: z.templateLiteral([name, '.', name]).optional(),
            }),
          )
          .min(1),
      }),
    )
    .min(1),
});

export type Finder = z.output<typeof finderSchema>;
