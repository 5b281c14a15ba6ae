/** Words for what is wrong with a file of the evidence model. */
import type { ModelProblem, ModelProblemCode } from '../diagnosis/problem.ts';
import type { ProblemWords } from './guide-words.ts';

/** What to do about each slip in `content/model`. */
const hints: Readonly<Record<ModelProblemCode, string>> = {
  'not-yaml': 'Check indentation, brackets and quotes at this place.',
  'wrong-shape': 'Compare with the same key elsewhere in the file.',
  'unknown-fault': 'Use a name listed under faults.',
  'unknown-part': 'Use a name listed under parts.',
  'unknown-access': 'Use a name listed under access.',
  'unknown-check': 'Use a name listed under checks.',
  'unknown-evidence':
    'Use the name of a page, with its guide and / before it where several guides have one of that name, or detail. and a detail.',
  'unknown-answer': 'Use an answer that this question offers.',
  'unsure-is-no-evidence': 'Take unsure out: it never carries information.',
  twice: 'Take one of the two out.',
  'priors-do-not-sum-to-one': 'Correct the priors so that they sum to 1.',
  'row-does-not-sum-to-one': 'Correct the row so that it sums to 1.',
  'row-length': 'Give one figure for each answer.',
  'unknown-fact': 'Use a name listed under facts.',
  'unknown-value': 'Use a value that this fact has.',
  'unknown-guide': 'Use the name of a guide.',
  'is-about-nothing': 'Say what fact the table is about, or take is out.',
  'row-of-nothing': 'Name faults or a condition, or make it the default.',
  'not-one-clear-result': 'Let exactly one result rule nothing in.',
  'no-room-for-clear-result': 'Lower catches or false-alarms.',
  'fault-without-check': 'Let a result of some check rule it in.',
  'unsafe-reading': 'Resistance needs proved-dead and wires-off; a live reading has neither.',
  'checks-in-a-circle': 'Take one of the waits out.',
  'order-breaks-after': 'Move it behind the check it waits for.',
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
