import { readFileSync } from 'node:fs';
import { inRoot } from '../../../src/cli/root.ts';
import { content } from '../../../src/content/load.ts';
import { loadGuides } from '../../../src/guide/load-guides.ts';
import { madeUp } from '../made-up.ts';
import type { Pages } from './pages.ts';

/** Two questions beside each other in 14 layers, the hall, and the danger question: 30. */
export const thirty = madeUp('thirty', 30, undefined, 14);
const QUESTIONS = 30;

interface Sentences {
  readonly title: string;
  readonly help?: readonly string[];
  readonly now?: readonly string[];
  readonly lines?: readonly string[];
  readonly why?: string;
  readonly answers?: Readonly<Record<string, string>>;
}

/** The guide with its sentences as one piece of data, what an app in one page carries. */
export function pages(): Pages {
  const blocks = content().blocks();
  const files = [{ source: thirty.graph, file: 'thirty' }];
  const loaded = blocks.ok ? loadGuides(files, blocks.value) : blocks;
  const [guide] = loaded.ok ? loaded.value : [];
  if (!guide) throw new Error('the guide of 30 questions does not load');
  const texts = {
    ...(JSON.parse(readFileSync(inRoot('content/text/en/blocks.json'), 'utf8')) as object),
    ...thirty.text,
  } as Record<string, Sentences>;
  const asked = [...guide.nodes.values()].filter(({ kind }) => kind === 'question').length;
  if (asked !== QUESTIONS) throw new Error(`${String(asked)} questions, not ${String(QUESTIONS)}`);
  const of = ([id, { sentences, answers }]: readonly [
    string,
    { sentences: string; answers: readonly { id: string; to: string }[] },
  ]) => {
    const words = texts[sentences];
    if (!words) throw new Error(`no sentences for ${sentences}`);
    const lines = words.help ?? words.now ?? words.lines ?? [];
    return [
      id,
      {
        title: words.title,
        lines,
        why: words.why ?? '',
        answers: answers.map((one) => ({
          id: one.id,
          to: one.to,
          label: words.answers?.[one.id] ?? one.id,
        })),
      },
    ] as const;
  };
  return { start: guide.start, pages: Object.fromEntries([...guide.nodes].map(of)) };
}
