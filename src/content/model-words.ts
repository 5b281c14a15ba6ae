/** Words for what is wrong with a diagnosis model's file. */
import type { ModelProblem, ModelProblemCode } from '../diagnosis/problem.ts';
import type { ProblemWords } from './guide-words.ts';

/** What to do about each slip in `faults.yaml`. */
const hints: Readonly<Record<ModelProblemCode, string>> = {
  'not-yaml': 'Check indentation, brackets and quotes at this place.',
  'wrong-shape': 'Compare with the same key elsewhere in the file.',
  'unknown-fault': 'Use a name listed under faults.',
  'unknown-part': 'Use a name listed under parts.',
  'unknown-access': 'Use a name listed under access.',
  'unknown-check': 'Use a name listed under checks.',
  'wrong-guide': 'Give the name of the folder that the file is in.',
  'unknown-evidence': 'Use the text name of a node in graph.yaml, or detail. and a detail.',
  'unknown-answer': 'Use an answer that this question offers.',
  'unsure-is-no-evidence': 'Take unsure out: it never carries information.',
  twice: 'Take one of the two out.',
  'priors-do-not-sum-to-one': 'Correct the priors so that they sum to 1.',
  'row-does-not-sum-to-one': 'Correct the row so that it sums to 1.',
  'row-length': 'Give one figure for each answer.',
  'too-many-checks': 'Leave out or merge checks: the plan is exact up to 16.',
  'too-many-faults': 'Leave out or merge faults: there may be 31.',
  'too-many-parts': 'Leave out or merge parts: there may be 16.',
  'not-one-clear-result': 'Let exactly one result rule nothing in.',
  'no-room-for-clear-result': 'Lower catches or false-alarms.',
  'fault-without-check': 'Let a result of some check rule it in.',
  'unsafe-reading': 'Resistance needs proved-dead and wires-off; a live reading has neither.',
  'checks-in-a-circle': 'Take one of the waits out.',
  'fixed-order-breaks-after': 'Move it behind the check it waits for.',
  'fixed-order-misses': 'Add it to fixed-order.',
};

/** What is wrong with a diagnosis model and what to do. */
export function tellModelTrouble({
  path,
  code,
  facts,
}: Pick<ModelProblem, 'path' | 'code' | 'facts'>): ProblemWords {
  const told = Object.entries(facts).map(([name, value]) => `${name} ${String(value)}`);
  const what = [path, code, ...told].filter((one) => one !== '').join(', ');
  return { what, hint: hints[code] };
}
