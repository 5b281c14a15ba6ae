/**
 * Note codes at a terminal. One line out for each line in; the exit status is 0 when
 * every line was usable as it was given, 2 otherwise: a repaired code is a proposal.
 */
import { createInterface } from 'node:readline';
import { once } from 'node:events';
import { currentCodebooks } from '../content/codebooks.ts';
import type { CurrentCodebooks } from '../content/codebooks.ts';
import { content, firm } from '../content/load.ts';
import { tellProblems } from '../content/tell.ts';
import { command, fail, options, wholeNumber } from './command.ts';
import { jobLabels } from '../app/shared/job-text.ts';
import { staffWords } from './words.ts';
import { jobLines, newestGuide, readLine, sampleLines, writeLine } from './note-commands.ts';
import type { Line } from './note-commands.ts';
import { loadFigures, routeOutput } from './route.ts';
import { isTooLarge } from '../route/limits.ts';
import { textOf } from '../decode.ts';
import { NO_TEXT, TOO_LONG, tellEntries } from './route-words.ts';

const USAGE = `Use:
  npm run -s note -- read CODE…                 read codes; without any, one a line from standard input
  npm run -s note -- job < message.txt          the job in a message, a link or a code, written in full; --json
  npm run -s note -- write                      JSON journeys, one a line from standard input, to codes
  npm run -s note -- round < codes.txt          a day's visits: codes one a line, or CSV with a code column
       --csv   a table instead of JSON
  npm run -s note -- journeys GUIDE --count     how many journeys a guide has
  npm run -s note -- journeys GUIDE --sample N --seed S   N journeys as JSON, one a line
The JSON is described in public/schema: job.json, journey.json, reading.json and round.json.`;

const BAD = 2;
/** A sample's most journeys: minutes of work. */
const SAMPLE_MOST = 1_000_000;

function codebooksOrStop(today: Date): CurrentCodebooks {
  const current = currentCodebooks(content(), today);
  if (!current.ok) return fail(tellProblems(current.error));
  if (current.value.draft) {
    console.error('No release is frozen yet: these codes may change their meaning.');
  }
  return current.value;
}

/** Waits until whoever reads has taken the line, so that none pile up here. */
async function print({ text, good }: Line): Promise<void> {
  if (!good) process.exitCode = BAD;
  if (!process.stdout.write(`${text}\n`)) await once(process.stdout, 'drain');
}

async function eachInputLine(use: (text: string, line: number) => Line): Promise<void> {
  let line = 0;
  for await (const text of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
    line += 1;
    await print(use(text, line));
  }
}

async function read(
  codes: readonly string[],
  current: CurrentCodebooks,
  today: Date,
): Promise<void> {
  const labels = jobLabels(staffWords());
  if (codes.length === 0) await eachInputLine((text) => readLine(text, current, today, labels));
  else for (const code of codes) await print(readLine(code, current, today, labels));
}

async function job(current: CurrentCodebooks, today: Date, { json = false }: Wish): Promise<void> {
  const wish = { words: staffWords(), figures: loadFigures(), site: firm().site, json };
  for (const line of jobLines(await givenText(), current, today, wish)) await print(line);
}

/** All of standard input as text; its length is looked at before it is all held. */
async function givenText(): Promise<string> {
  const chunks: Buffer<ArrayBuffer>[] = [];
  let bytes = 0;
  for await (const chunk of process.stdin as AsyncIterable<Buffer<ArrayBuffer>>) {
    bytes += chunk.length;
    if (isTooLarge(bytes)) return fail(TOO_LONG);
    chunks.push(chunk);
  }
  const text = textOf(Buffer.concat(chunks));
  return text.ok ? text.value : fail(NO_TEXT);
}

async function route(current: CurrentCodebooks, today: Date, csv: boolean): Promise<void> {
  const made = routeOutput(await givenText(), current, today, csv);
  if (!made.ok) return fail(tellEntries(made.error));
  await print(made.value);
}

interface Wish {
  readonly csv?: boolean | undefined;
  readonly json?: boolean | undefined;
  readonly count?: boolean | undefined;
  readonly sample?: string | undefined;
  readonly seed?: string | undefined;
}

async function journeys(
  name: string | undefined,
  { count, sample, seed = '1' }: Wish,
  current: CurrentCodebooks,
): Promise<void> {
  if (name === undefined || (count === true) === (sample !== undefined)) fail(USAGE);
  const guide = newestGuide(name, current);
  if (!guide) {
    const names = current.codebooks.get(current.newest)?.guides.map(({ id }) => id) ?? [];
    return fail(`There is no guide "${name}". There is: ${names.join(', ')}.`);
  }
  if (sample === undefined) {
    await print({ text: String(guide.first.journeys), good: true });
    return;
  }
  const size = wholeNumber(sample, 'sample', 0, SAMPLE_MOST);
  for (const text of sampleLines(guide, size, wholeNumber(seed, 'seed', 0, 999_999_999)))
    await print({ text, good: true });
}

// Whoever reads the lines may have seen enough (`| head`): not an error.
process.stdout.on('error', () => process.exit());

const {
  positionals: [name, ...rest],
  values,
} = options(
  {
    allowPositionals: true,
    options: {
      count: { type: 'boolean' },
      csv: { type: 'boolean' },
      json: { type: 'boolean' },
      sample: { type: 'string' },
      seed: { type: 'string' },
    },
  },
  USAGE,
);
const today = new Date();

await command(async () => {
  if (name === 'read') await read(rest, codebooksOrStop(today), today);
  else if (name === 'job' && rest.length === 0) await job(codebooksOrStop(today), today, values);
  else if (name === 'write' && rest.length === 0) {
    const current = codebooksOrStop(today);
    await eachInputLine((text, line) => writeLine(text, line, current, today));
  } else if (name === 'round' && rest.length === 0)
    await route(codebooksOrStop(today), today, values.csv === true);
  else if (name === 'journeys') await journeys(rest[0], values, codebooksOrStop(today));
  else fail(USAGE);
});
