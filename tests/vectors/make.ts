/** Writes the vectors of every release that has none yet; see README.md. */
import { readdirSync, writeFileSync } from 'node:fs';
import { inRoot, releasesFolder } from '../../src/cli/books.ts';
import { hasVectors, makeVectors, readRelease, vectorPath } from './vectors.ts';

const releases = readdirSync(inRoot(releasesFolder))
  .map((name) => /^(\d+)\.json$/.exec(name)?.[1])
  .filter((number) => number !== undefined)
  .map(Number);

for (const number of releases.toSorted((a, b) => a - b)) {
  if (hasVectors(number)) continue;
  const { text, release } = readRelease(number);
  const { vectors, ...head } = makeVectors(release, text);
  const lines = vectors.map((vector) => `    ${JSON.stringify(vector)}`).join(',\n');
  const body = `${JSON.stringify(head, null, 2).slice(0, -2)},\n  "vectors": [\n${lines}\n  ]\n}\n`;
  writeFileSync(vectorPath(number), body, { flag: 'wx' });
  process.stdout.write(`note-${number}.json: ${vectors.length} vectors\n`);
}
