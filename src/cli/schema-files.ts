/** The published JSON Schemas: what the command line takes and prints, a desk's job, a round, and the files of releases and visits. */
import { format } from 'prettier';
import { z } from 'zod';
import { visitsFile } from '../diagnosis/visits-schema.ts';
import { releaseSchema } from '../note/release-schema.ts';
import { jobSchema } from './job-json.ts';
import { journeySchema, readingSchema } from './note-json.ts';
import { routeSchema } from './route-json.ts';

/** File from the top folder → its text. */
export async function schemaFiles(): Promise<Map<string, string>> {
  const schemas = {
    job: jobSchema,
    journey: journeySchema,
    reading: readingSchema,
    release: releaseSchema,
    round: routeSchema,
    visits: visitsFile,
  };
  const files = new Map<string, string>();
  for (const [name, schema] of Object.entries(schemas)) {
    // What people write: fields with a default may be left out.
    const json = z.toJSONSchema(schema, { io: 'input' });
    const text = await format(JSON.stringify(json), { parser: 'json', printWidth: 100 });
    files.set(`public/schema/${name}.json`, text);
  }
  return files;
}
