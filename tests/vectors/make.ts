/** Writes the vectors of every release that has none yet; see README.md. */
import { readFileSync, writeFileSync } from 'node:fs';
import { releases } from '../../src/content/load.ts';
import { hasVectors, makeVectors, releasePath, vectorPath } from './vectors.ts';

for (const release of releases()) {
  const number = release.release;
  if (hasVectors(number)) continue;
  const text = readFileSync(releasePath(number), 'utf8');
  const { vectors, ...head } = makeVectors(release, text);
  const lines = vectors.map((vector) => `    ${JSON.stringify(vector)}`).join(',\n');
  const body = `${JSON.stringify(head, null, 2).slice(0, -2)},\n  "vectors": [\n${lines}\n  ]\n}\n`;
  writeFileSync(vectorPath(number), body, { flag: 'wx' });
  process.stdout.write(`note-${number}.json: ${vectors.length} vectors\n`);
}
