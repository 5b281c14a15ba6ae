/**
 * The study's tasks done by made-up readers: who knows the story answers rightly, but for slips drawn
 * by chance; on a page that the story says nothing of, the answer is "I am not sure".
 */
import { seeded } from '../../src/diagnosis/random.ts';
import type { Task } from '../../src/content/schema/safety.ts';
import type { Guide, GuideNode } from '../../src/guide/types.ts';

/** Readers, and how likely each answer is a slip: any other one of the page, "not sure" too. */
const readers = [
  { reader: 'Never slips', slips: 0 },
  { reader: 'Slips once in 20 answers', slips: 0.05 },
  { reader: 'Slips once in 5 answers', slips: 0.2 },
] as const;

const urgencies = ['none', 'soon', 'today', 'emergency'] as const;
const rank = ({ urgency }: GuideNode): number => urgencies.indexOf(urgency);

/** Where a session ends. */
function session(
  guide: Guide,
  truth: ReadonlyMap<string, string>,
  slips: number,
  draw: () => number,
) {
  let node = guide.nodes.get(guide.start);
  while (node && node.answers.length > 0) {
    const own = truth.get(node.sentences) ?? 'unsure';
    const right = node.answers.find(({ id }) => id === own);
    const others = node.answers.filter((one) => one !== right);
    const slipped = draw() < slips ? others[Math.floor(draw() * others.length)] : undefined;
    const given = slipped ?? right ?? node.answers.find(({ id }) => id === 'unsure');
    node = given && guide.nodes.get(given.to);
  }
  return node;
}

/** Sessions of a task: how many came to the right end, and how many to one less urgent. */
function sessions(guide: Guide, task: Task, slips: number, count: number, seed: number) {
  const draw = seeded(seed);
  const truth = new Map(
    task.way.split(' ').map((step) => step.split('.') as [page: string, answer: string]),
  );
  const right = [...guide.nodes.values()].find(({ sentences }) => String(sentences) === task.end);
  if (!right) throw new Error(`no page ${task.end}`);
  const ends = Array.from({ length: count }, () => session(guide, truth, slips, draw));
  return {
    reached: ends.filter((end) => end?.sentences === right.sentences).length,
    unsafe: ends.filter((end) => !end || rank(end) < rank(right)).length,
  };
}

/** What each reader comes to in all tasks. */
export const rehearse = (guides: readonly Guide[], tasks: readonly Task[], count: number) =>
  readers.map(({ reader, slips }) => {
    const all = tasks.map((task, seed) => {
      const guide = guides.find(({ id }) => String(id) === task.guide);
      if (!guide) throw new Error(`no guide ${task.guide}`);
      return sessions(guide, task, slips, count, seed);
    });
    const sum = (of: 'reached' | 'unsafe') => all.reduce((total, one) => total + one[of], 0);
    return {
      reader,
      sessions: count * tasks.length,
      reached: sum('reached'),
      unsafe: sum('unsafe'),
    };
  });
