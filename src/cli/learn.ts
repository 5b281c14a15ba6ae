/**
 * Propose figures learned from visits. Exit status 0 when the files could be used,
 * 2 otherwise. Writes nothing without --write, nor where learning does not help.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildModel } from '../diagnosis/build-model.ts';
import { named, onceEach } from '../diagnosis/read-visits.ts';
import { USUAL } from '../diagnosis/learn.ts';
import { study } from '../diagnosis/score.ts';
import type { Study } from '../diagnosis/score.ts';
import { selectionOf } from '../diagnosis/selection.ts';
import { content } from '../content/load.ts';
import { fail, options as given, wholeNumber } from './command.ts';
import { namesOf, type Names } from '../content/model-names.ts';
import { rewritten } from '../diagnosis/rewrite.ts';
import { figuresOf, strangers, visitsOf } from './learn-files.ts';
import { changeLines, scoreLines, verdict } from './learn-words.ts';

const USAGE = `Use:
  npm run learn -- VISITS.JSON…      what visits would change in the figures
    --write          change the files in content/model, if that foretells better
    --strength N     how many visits each old distribution is worth (${USUAL.strength})
    --minimum N      fewer visits leave a distribution as it is (${USUAL.minimum})
    --model FOLDER   figures elsewhere than in content/model
    --json           for machines
The form of VISITS.JSON is in public/schema/visits.json.`;

/** More visits than any firm has. */
const MOST = 999_999;

/** All visits of the files. */
function allVisits(files: readonly string[]) {
  if (files.length === 0) return fail(USAGE);
  const read = files.map((file) => ({ file, visits: visitsOf(file) }));
  const bad = read.flatMap(({ visits }) => (visits.ok ? [] : visits.error));
  if (bad.length > 0) return fail(bad.join('\n'));
  return read.flatMap(({ file, visits }) => (visits.ok ? [{ file, visits: visits.value }] : []));
}

interface Outcome extends Study {
  readonly guides: readonly string[];
  readonly written: string | undefined;
}

function tell(outcome: Outcome, names: Names): void {
  const { guides, visits, unlisted, heldOut, changes, written } = outcome;
  const lines = [
    `${visits} visits of ${guides.join(', ')}; ${unlisted} found nothing, or a fault that is not listed.`,
    ...(heldOut ? scoreLines(heldOut) : []),
    ...(changes.length > 0 ? ['What would change:', ...changeLines(changes, names)] : []),
    verdict(outcome, written),
  ];
  console.log(lines.join('\n'));
}

function main(): void {
  const { values, positionals } = given(
    {
      allowPositionals: true,
      options: {
        write: { type: 'boolean', default: false },
        json: { type: 'boolean', default: false },
        strength: { type: 'string', default: String(USUAL.strength) },
        minimum: { type: 'string', default: String(USUAL.minimum) },
        model: { type: 'string' },
      },
    },
    USAGE,
  );
  const strength = wholeNumber(values.strength, 'strength', 1, MOST);
  const minimum = wholeNumber(values.minimum, 'minimum', 1, MOST);
  const good = allVisits(positionals);
  const folder = values.model ?? join(content().root, 'model');
  const shown = values.model ?? content().shown('model');
  const figures = figuresOf(folder);
  if (!figures.ok) return fail(figures.error.join('\n'));
  const { files, model, guides } = figures.value;
  const unknown = good.flatMap((one) => strangers(one.file, one.visits, model));
  if (unknown.length > 0) fail(unknown.join('\n'));

  const tables = new Set(Object.keys(model.observations));
  // Two devices may have handed on the same visit.
  const visits = onceEach(
    good.flatMap(({ visits: { guide, visits: own } }) =>
      own.map((one) => named(one, guide, tables)),
    ),
  );
  const selection = selectionOf(buildModel(model), guides);
  const found = study(model, visits, { strength, minimum, selection });
  const write = values.write && found.better;
  if (write)
    for (const { file, source } of files) writeFileSync(file, rewritten(source, found.changes));
  const outcome: Outcome = {
    guides: [...new Set(good.map((one) => one.visits.guide))],
    ...found,
    written: write ? shown : undefined,
  };
  if (values.json) console.log(JSON.stringify(outcome, null, 2));
  else tell(outcome, namesOf(guides));
}

main();
