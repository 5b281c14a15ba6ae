import type { Guide } from '../../guide/types.ts';
import { moreQuestions, remaining, type Remaining } from '../../guide/remaining.ts';
import type { DeskNode, DeskPart } from '../../app/desk/page.ts';
import { makeCalls } from './phone-links.ts';
import { guideTexts } from './texts.ts';

function moreOf(left: Remaining | undefined): Pick<DeskNode, 'more'> {
  const more = left && moreQuestions(left);
  return more === undefined ? {} : { more };
}

function nodesOf(guide: Guide): Record<string, DeskNode> {
  const left = remaining(guide);
  return Object.fromEntries(
    [...guide.nodes.values()].map((node) => [
      node.id,
      {
        ...moreOf(left.get(node.id)),
        ...(node.caution ? { caution: node.caution } : {}),
        ...(node.timer ? { timer: node.timer } : {}),
        ...(node.takesError ? { takesError: true as const } : {}),
        ...(node.breakerStaysOff ? { breakerStaysOff: true as const } : {}),
      },
    ]),
  );
}

/** What the desk loads for a guide. */
export function deskPart(language: string, guide: Guide): DeskPart {
  return {
    nodes: nodesOf(guide),
    calls: makeCalls(language, guide),
    texts: guideTexts(language, guide, [
      'short',
      'title',
      'care',
      'help',
      'lines',
      'why',
      'callNote',
      'now',
      'never',
      'answers',
    ]),
  };
}
