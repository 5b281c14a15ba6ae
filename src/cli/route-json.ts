/** The JSON of a round; the schema in `public/schema` is made from this. */
import { z } from 'zod';
import { urgencies } from '../guide/types.ts';
import { code, placeSchema, problemSchema } from './note-json.ts';

const count = z.int().min(0);
const share = z.number().min(0).max(1);
const pair = z.array(z.string()).max(2).describe('Node and answer; empty where there is none');
const columns = z.record(z.string(), z.string()).describe('Columns of the table carried along');
const row = z.int().min(1).describe('Row of what was given, from 1');

const visit = z.strictObject({
  row,
  code: code.nullable().describe('Null for a visit without a code yet, and all it would say'),
  guide: z.string().nullable(),
  release: z.int().min(1).nullable(),
  made: z.iso.date().nullable(),
  urgency: z.enum([...urgencies, 'open']).describe('open where the guide was left before its end'),
  at: z.string().nullable().describe('Node the journey stands at'),
  because: pair,
  danger: pair,
  flags: z.array(z.string()).describe('Safety flags: danger to people first'),
  ranked: z
    .string()
    .nullable()
    .describe('Guide whose faults are ranked: the one the journey ended in'),
  figures: z
    .strictObject({
      faults: z.array(z.strictObject({ fault: z.string(), share })).describe('Likeliest first'),
      parts: z
        .array(z.strictObject({ part: z.string(), chance: share }))
        .describe('Chance that the visit needs it'),
      load: z.array(z.string()).describe('Parts by model to take along for this visit'),
      minutes: z
        .strictObject({
          expected: z.number().min(0),
          cautious: count.describe('Enough with the chance `quantile`'),
          leftOver: share.describe('Share of the faults that no check finds'),
        })
        .describe('Until the fault is found, given that one of the checks finds it'),
    })
    .nullable()
    .describe('Null for a guide without figures, and in an emergency'),
  columns,
});

const unread = z.strictObject({
  row,
  text: z.string(),
  problem: problemSchema.optional(),
  proposal: z
    .strictObject({
      ...{ code, places: z.array(placeSchema).readonly() },
      digits: z.literal(true).optional(),
      spare: count,
    })
    .optional()
    .describe('A repaired code, to be confirmed by the caller'),
  columns,
});

export const routeSchema = z
  .strictObject({
    version: z.literal(2),
    quantile: share.describe('Chance with which the cautious minutes are enough'),
    visits: z.array(visit).describe('In the order of the day'),
    unread: z.array(unread).describe('Lines that are no visits yet'),
    total: z.strictObject({
      expected: z.number().min(0),
      cautious: count,
      withoutFigures: count.describe('Visits that are not in these minutes and this load'),
    }),
    load: z.strictObject({
      stock: z
        .array(
          z.strictObject({
            part: z.string(),
            mean: z.number().min(0).describe('How many the visits are expected to need'),
            count: z.int().min(1),
          }),
        )
        .describe('Parts that fit any range, for all visits together'),
      chance: share.describe('Expected share of the visits that need no second one'),
    }),
  })
  .meta({ title: 'Round' });
