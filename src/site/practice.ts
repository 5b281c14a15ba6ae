import { content, guides } from '../content/load.ts';
import { nodeText } from './words.ts';
import type { GuideId } from '../guide/types.ts';

/** A call to practice with: the first made-up visit, as its caller tells it. */
export interface PracticeCall {
  readonly guide: GuideId;
  readonly said: readonly { readonly asked: string; readonly answer: string }[];
  /** The title of the page it ends at. */
  readonly end: string;
}

/** Throws where there is no made-up visit; the gates hold each to the guide. */
export function practiceCall(language: string): PracticeCall {
  const demos = content().demos();
  const [demo] = demos.ok ? demos.value : [];
  const guide = guides().find(({ id }) => String(id) === demo?.guide);
  if (!demo || !guide) throw new Error('content/demo.json has no visit to practice with.');
  const answers = demo.answers.map(([at, given]) => {
    const node = [...guide.nodes.values()].find(({ id }) => String(id) === at);
    const answer = node?.answers.find(({ id }) => String(id) === given);
    if (!node || !answer) throw new Error(`content/demo.json: no answer ${at}.${given}`);
    const text = nodeText(language, guide, node.sentences);
    return { asked: text.short, answer: text.answers?.[answer.id] ?? '', to: answer.to };
  });
  const end = guide.nodes.get(answers.at(-1)?.to ?? guide.start);
  return {
    guide: guide.id,
    said: answers,
    end: end ? nodeText(language, guide, end.sentences).title : '',
  };
}
