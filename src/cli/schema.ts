/** Writes `public/schema/*.json` from the zod schemas: `node src/cli/schema.ts`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { inRoot } from './root.ts';
import { schemaFiles } from './schema-files.ts';

mkdirSync(inRoot('public/schema'), { recursive: true });
for (const [file, text] of await schemaFiles()) {
  writeFileSync(inRoot(file), text);
  console.log(file);
}
