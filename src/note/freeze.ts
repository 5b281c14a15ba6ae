/** Freezing the working guides into a release, and telling when that is due. */
import { ownNodes } from '../guide/ids.ts';
import type { Answer, Guide, GuideNode } from '../guide/types.ts';
import type {
  AnswerMarks,
  PageMarks,
  Release,
  ReleaseAnswer,
  ReleaseDetail,
  ReleaseGuide,
  ReleaseNode,
} from './release.ts';

/**
 * The codebook of guides as they are now. Guides keep their order: it is part of the code.
 * @param published ISO 8601 date
 */
export function freeze(
  guides: readonly Guide[],
  details: readonly ReleaseDetail[],
  release: number,
  published: string,
): Release {
  return {
    release,
    published,
    details: details.map(({ id, answers }) => ({ id, answers: [...answers] })),
    guides: guides.map(freezeGuide),
  };
}

/** Each guide once: what it hands over to is frozen as that other guide's. */
function freezeGuide(guide: Guide): ReleaseGuide {
  const { id, start, exits } = guide;
  return { id, start, nodes: ownNodes(guide).map(freezeNode), exits: exits.map(freezeAnswer) };
}

function freezeNode(node: GuideNode): ReleaseNode {
  const { id, page, track, sentences, kind, urgency, answers } = node;
  const ends = kind === 'stop' || kind === 'finish';
  const marks = marksOf(node);
  return {
    id,
    ...(page === id ? {} : { page }),
    ...(track === undefined ? {} : { track }),
    ...((sentences as string) === id ? {} : { text: sentences }),
    kind,
    ...(ends ? { urgency } : { answers: answers.map(freezeAnswer) }),
    ...(Object.keys(marks).length > 0 ? { marks } : {}),
  };
}

function marksOf({ heat, flag, answers }: GuideNode): PageMarks {
  const marked = answers
    .map((answer) => [answer.id, answerMarks(answer)] as const)
    .filter(([, marks]) => Object.keys(marks).length > 0);
  return {
    ...(heat ? { heat } : {}),
    ...(flag === undefined ? {} : { flag }),
    ...(marked.length > 0 ? { answers: Object.fromEntries(marked) } : {}),
  };
}

function answerMarks({ flag, heatEnded }: Answer): AnswerMarks {
  return {
    ...(flag === undefined ? {} : { flag }),
    ...(heatEnded === undefined ? {} : { heatEnded }),
  };
}

function freezeAnswer({ id, to }: Answer): ReleaseAnswer {
  return [id, to];
}

/** Where the working guides and a release part: a node, a guide's frame, or the details. */
export type Difference =
  | { readonly part: 'details' }
  | { readonly part: 'guides'; readonly frozen: readonly string[]; readonly now: readonly string[] }
  | { readonly part: 'guide'; readonly guide: string }
  | { readonly part: 'node'; readonly guide: string; readonly node: string };

/**
 * Everything in which codes of the newest release would no longer say what the guides
 * say. Empty: the release still fits. Anything else needs a new release.
 */
export function differs(
  guides: readonly Guide[],
  details: readonly ReleaseDetail[],
  newest: Release,
): Difference[] {
  const now = freeze(guides, details, newest.release, newest.published);
  const found: Difference[] = [];
  if (!same(now.details.map(detailKey), newest.details.map(detailKey)))
    found.push({ part: 'details' });
  const frozenNames = newest.guides.map(({ id }) => id);
  const names = now.guides.map(({ id }) => id);
  if (!same(frozenNames, names)) found.push({ part: 'guides', frozen: frozenNames, now: names });
  for (const guide of now.guides) {
    const frozen = newest.guides.find(({ id }) => id === guide.id);
    if (frozen) found.push(...guideDifferences(guide, frozen));
  }
  return found;
}

function guideDifferences(now: ReleaseGuide, frozen: ReleaseGuide): Difference[] {
  const before = new Map(frozen.nodes.map((node) => [node.id, node]));
  const after = new Map(now.nodes.map((node) => [node.id, node]));
  const changed = [...new Set([...before.keys(), ...after.keys()])].filter((id) => {
    const [one, other] = [before.get(id), after.get(id)];
    return !one || !other || !same(nodeKey(one), nodeKey(other));
  });
  const frame = same([now.start, now.exits], [frozen.start, frozen.exits]);
  return [
    ...(frame ? [] : [{ part: 'guide', guide: now.id } as const]),
    ...changed.map((node) => ({ part: 'node', guide: now.id, node }) as const),
  ];
}

/** All that is frozen of a node, in a fixed order, whatever order a file has it in. */
function nodeKey(node: ReleaseNode): unknown[] {
  const { id, page = id, track, text = id, kind, urgency = 'none', answers = [], marks } = node;
  const told = answers.map(([answer]) => {
    const { flag, heatEnded } = marks?.answers?.[answer] ?? {};
    return [flag, heatEnded];
  });
  return [id, page, track, text, kind, urgency, answers, marks?.heat, marks?.flag, told];
}

function detailKey({ id, answers }: ReleaseDetail): unknown[] {
  return [id, answers];
}

/** Equal data; both sides are plain lists and strings. */
function same(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
