import { z } from 'zod';

/** `content/demo.json`: made-up visits, the preview's codes to try. */
export const demoSchema = z.array(
  z.strictObject({
    id: z.string().describe('Its sentence is demo.list.<id> in preview.json.'),
    guide: z.string(),
    answers: z.array(z.tuple([z.string(), z.string()])).min(1),
    error: z.string().default(''),
    details: z.record(z.string(), z.string()).default({}),
    made: z.iso.date(),
  }),
);

export type Demo = z.output<typeof demoSchema>[number];
