/**
 * The published JSON Schemas: what the command line takes and prints, a desk's job, a round, and the
 * files of releases and visits. `node src/cli/schema.ts` writes them.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { format } from 'prettier';
import { z } from 'zod';
import { visitsFile } from '../diagnosis/visits-schema.ts';
import { releaseSchema } from '../note/release-schema.ts';
import { jobSchema } from './job-json.ts';
import { journeySchema, readingSchema } from './note-json.ts';
import { inRoot } from './root.ts';
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

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(inRoot('public/schema'), { recursive: true });
  for (const [file, text] of await schemaFiles()) {
    writeFileSync(inRoot(file), text);
    console.log(file);
  }
}
