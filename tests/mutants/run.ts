// npm run mutants: how many unsafe slips in each published guide the proof catches.
import { mutationScores } from './published.ts';
import { scoreLine } from './score.ts';

/** Enough of each kind of slip for a score in some seconds a guide. */
const OF_A_KIND = 200;

let missed = 0;
for (const { guide, score } of mutationScores(OF_A_KIND)) {
  console.log(`${guide}: ${scoreLine(score)}`);
  for (const name of score.missed) console.log(`  not caught: ${name}`);
  missed += score.missed.length;
}
process.exitCode = missed === 0 ? 0 : 1;
