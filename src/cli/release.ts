/**
 * Freeze the working guides as the next release, where they differ from the newest
 * one. Never changes a frozen file. With `--check`: only say whether one is due.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'prettier';
import { differs, freeze } from '../note/freeze.ts';
import type { Difference } from '../note/freeze.ts';
import type { Release } from '../note/release.ts';
import { checkContent } from '../content/gates.ts';
import { ContentError, content, details, guides, releases } from '../content/load.ts';
import { tellProblems } from '../content/tell.ts';
import { command } from './command.ts';

function inWords(difference: Difference): string {
  switch (difference.part) {
    case 'details':
      return 'the optional details';
    case 'guides':
      return `the list of guides: ${difference.frozen.join(', ')} → ${difference.now.join(', ')}`;
    case 'guide':
      return `${difference.guide}: its start or its danger answers`;
    case 'node':
      return `${difference.guide}: ${difference.node}`;
  }
}

async function write(release: Release): Promise<string> {
  const path = `releases/${String(release.release)}.json`;
  const text = await format(JSON.stringify(release), { parser: 'json', printWidth: 100 });
  // Refuses to overwrite, even when two people freeze at once.
  writeFileSync(join(content().root, path), text, { flag: 'wx' });
  return content().shown(path);
}

/** What stays wrong until a release is frozen, and is no reason not to freeze one. */
const DUE = ['release-of-others', 'demo-broken'];

await command(async () => {
  const problems = checkContent(content()).filter(
    ({ about, trouble }) => about !== 'file' || !DUE.includes(trouble.code),
  );
  if (problems.length > 0) throw new ContentError(tellProblems(problems));
  const newest = releases().at(-1);
  const differences = newest ? differs(guides(), details(), newest) : [];
  for (const difference of differences) console.log(`Changed: ${inWords(difference)}`);

  if (newest && differences.length === 0) {
    console.log(`Release ${newest.release} still fits the guides; nothing to freeze.`);
  } else if (process.argv.includes('--check')) {
    console.log('A release is due: run npm run release.');
    process.exitCode = 1;
  } else {
    const today = new Date().toISOString().slice(0, 10);
    const next = freeze(guides(), details(), (newest?.release ?? 0) + 1, today);
    const file = await write(next);
    console.log(`Frozen: ${file}. Now run node tests/vectors/make.ts and commit both.`);
  }
});
