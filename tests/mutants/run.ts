// npm run mutants: how many unsafe slips in each published guide the proof catches; with `code` and files, or
// none for all that guard, how many slips in the project's own code its tests catch.
import { codeMutants } from './code.ts';
import { mutationScores } from './published.ts';
import { scoreLine } from './score.ts';

/** Enough of each kind of slip for a score in some seconds a guide. */
const OF_A_KIND = 200;

function guideMutants(): boolean {
  let missed = 0;
  for (const { guide, score } of mutationScores(OF_A_KIND)) {
    console.log(`${guide}: ${scoreLine(score)}`);
    for (const name of score.missed) console.log(`  not caught: ${name}`);
    missed += score.missed.length;
  }
  return missed === 0;
}

const [what, ...files] = process.argv.slice(2);
process.exitCode = (what === 'code' ? await codeMutants(files) : guideMutants()) ? 0 : 1;
