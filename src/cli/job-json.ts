/** The JSON of a job as the desk gives it; the schema in `public/schema` is made from this. */
import { z } from 'zod';
import { urgencies } from '../guide/types.ts';
import { callerFields, callerMost, payers } from '../visit/job.ts';
import { codeSchema } from './note-json.ts';

const pair = z.tuple([z.string(), z.string()]);
const caller = Object.fromEntries(
  callerFields.map((field) => [
    field,
    // The pattern keeps a value on one line; a remark may have several.
    (field === 'pays'
      ? z.enum(payers)
      : z
          .string()
          .min(1)
          .max(2 * callerMost[field])
          .regex(field === 'remark' ? /^[^\r]*$/ : /^[^\r\n]*$/)
    ).optional(),
  ]),
);

/** What a call ends in. */
export const jobSchema = z
  .strictObject({
    version: z.literal(1),
    code: codeSchema,
    codeReadBack: z.boolean().describe('The caller read the code back without a difference'),
    guide: z.string(),
    release: z.int().min(1).describe('Release of the guides the names belong to'),
    made: z.iso.date(),
    urgency: z
      .enum([...urgencies, 'open'])
      .describe('open where the guide was left before its end'),
    outcome: z.strictObject({
      kind: z.enum(['stop', 'finish', 'open']),
      at: z.string().describe('Node the journey stands at'),
      because: pair.describe('Node and answer that led there'),
    }),
    breakerStaysOff: z.boolean(),
    answers: z.array(pair).min(1).describe('Pairs of node and answer, in the order given'),
    error: z.string().describe("The display's text, exactly as shown"),
    details: z.record(z.string(), z.string()),
    cautions: z
      .strictObject({ read: z.array(z.string()), unread: z.array(z.string()) })
      .describe('Nodes whose cautions were read out in the call, and those whose were not'),
    caller: z.strictObject(caller).describe('Personal data. It is in no code and no address'),
  })
  .meta({ title: 'Job' });
