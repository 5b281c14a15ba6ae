/**
 * Freeze the working guides as the next release, where they differ from the newest
 * one. Never changes a frozen file. With `--check`: only say whether one is due. With `--recall`
 * and `--page`: say which copies kept on devices must not be shown any more.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'prettier';
import { differs, freeze } from '../note/freeze.ts';
import type { Difference } from '../note/freeze.ts';
import type { Release } from '../note/release.ts';
import { checkContent } from '../content/gates.ts';
import {
  ContentError,
  content,
  details,
  guides,
  recall,
  releases,
  wholeGuides,
} from '../content/load.ts';
import { recallTroubles } from '../content/recall.ts';
import { recallSchema } from '../content/schema/recall.ts';
import { tellProblems } from '../content/tell.ts';
import { command, fail, options } from './command.ts';

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

const json = (value: unknown): Promise<string> =>
  format(JSON.stringify(value), { parser: 'json', printWidth: 100 });

async function write(release: Release): Promise<string> {
  const path = `releases/${String(release.release)}.json`;
  // Refuses to overwrite, even when two people freeze at once.
  writeFileSync(join(content().root, path), await json(release), { flag: 'wx' });
  return content().shown(path);
}

/** What stays wrong until a release is frozen, and is no reason not to freeze one. */
const DUE = ['release-of-others', 'demo-broken'];

/** Adds to `recall.json`. Nothing is ever taken back here: copies count its lines. */
async function writeRecall(asked: string | undefined, pages: readonly string[]): Promise<void> {
  const before = recall();
  const least = asked === undefined ? before.least : Number(asked);
  if (least < before.least)
    fail(`Copies below release ${String(before.least)} are recalled already.`);
  const next = recallSchema.safeParse({ least, pages: [...before.pages, ...pages] });
  if (!next.success)
    fail(
      'Give a release as --recall 6, and pages as --page /guide/page/ or, all of a guide, --page /guide/.',
    );
  for (const trouble of recallTroubles(next.data, wholeGuides(), releases()))
    fail(
      trouble.code === 'recall-above'
        ? `There is no release ${String(least)}: the newest is ${String(trouble.newest)}. Freeze the next one first: npm run release`
        : `No release has or had a page ${trouble.page}.`,
    );
  writeFileSync(join(content().root, 'recall.json'), await json(next.data));
  console.log(
    `Written: ${content().shown('recall.json')}. It takes effect with the next build you publish: npm run build.\n` +
      'That build must hold the correction: it takes the place of what is recalled.',
  );
}

async function freezeNext(check: boolean): Promise<void> {
  const problems = checkContent(content()).filter(
    ({ about, trouble }) => about !== 'file' || !DUE.includes(trouble.code),
  );
  if (problems.length > 0) throw new ContentError(tellProblems(problems));
  const newest = releases().at(-1);
  const differences = newest ? differs(guides(), details(), newest) : [];
  for (const difference of differences) console.log(`Changed: ${inWords(difference)}`);

  if (newest && differences.length === 0) {
    console.log(`Release ${newest.release} still fits the guides; nothing to freeze.`);
  } else if (check) {
    console.log('A release is due: run npm run release.');
    process.exitCode = 1;
  } else {
    const today = new Date().toISOString().slice(0, 10);
    const next = freeze(guides(), details(), (newest?.release ?? 0) + 1, today);
    const file = await write(next);
    console.log(`Frozen: ${file}. Now run node tests/vectors/make.ts and commit both.`);
  }
}

const {
  check,
  recall: asked,
  page,
} = options(
  {
    options: {
      check: { type: 'boolean', default: false },
      recall: { type: 'string' },
      page: { type: 'string', multiple: true, default: [] },
    },
  },
  'npm run release [-- --check | --recall RELEASE | --page /guide/page/ …]',
).values;
await command(() =>
  asked !== undefined || page.length > 0 ? writeRecall(asked, page) : freezeNext(check),
);
