/** The published JSON Schemas: what the command line takes and prints, and a release's file. */
import { format } from 'prettier';
import { z } from 'zod';
import { releaseSchema } from '../note/release-schema.ts';
import { journeySchema, readingSchema } from './note-json.ts';

/** File from the top folder → its text. */
export async function schemaFiles(): Promise<Map<string, string>> {
  const schemas = { journey: journeySchema, reading: readingSchema, release: releaseSchema };
  const files = new Map<string, string>();
  for (const [name, schema] of Object.entries(schemas)) {
    // What people write: fields with a default may be left out.
    const json = z.toJSONSchema(schema, { io: 'input' });
    const text = await format(JSON.stringify(json), { parser: 'json', printWidth: 100 });
    files.set(`public/schema/${name}.json`, text);
  }
  return files;
}
