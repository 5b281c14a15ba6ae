import { defined } from '../../defined.ts';
import type { Guide, GuideNode } from '../../guide/types.ts';
import { moreQuestions, remaining, type Remaining } from '../../guide/remaining.ts';
import type { DeskNode, DeskPart } from '../../app/desk/page.ts';
import { models, releases } from '../../content/load.ts';
import { detailKey, keyIn } from '../../diagnosis/evidence.ts';
import { partOfRelease } from '../../note/part-of-release.ts';
import { makeCalls } from './phone-links.ts';
import { deskNamespace } from '../words.ts';
import { guideTexts } from './texts.ts';

/** Facts that stand for a list of conditions, which the page has as its `help`. */
const PROMISED: ReadonlySet<string> = new Set(['panel-ready', 'stay-promised']);

/** The answer that says that every line of the page's `help` is true. */
const promiseOf = ({ answers }: GuideNode): string | undefined =>
  answers.find(({ sets }) => sets.some((fact) => PROMISED.has(fact)))?.id;

/** Facts that nothing safe to do rests on. */
const HARMLESS: ReadonlySet<string> = new Set(['trouble-seen', 'error-seen']);

/** Questions whose answer may be noted before they are asked: no caution, nothing is done upon it. */
function isAhead({ kind, block, caution, timer, answers }: GuideNode): boolean {
  if (block === 'danger') return false;
  const facts = answers.flatMap(({ sets, clears }) => [...sets, ...clears]);
  return kind === 'question' && !caution && !timer && facts.every((fact) => HARMLESS.has(fact));
}

const DETAIL = detailKey('');

/** What a page's answers tell of the details: the model knows. */
function tellsOf(guide: Guide, { sentences }: GuideNode): DeskNode['tells'] {
  const tables = (models()[guide.id]?.evidence ?? []).filter(({ key }) => key.startsWith(DETAIL));
  const found: Record<string, Record<string, string>> = {};
  for (const { key, tells = {} } of tables) {
    const page = tells[keyIn(new Set(Object.keys(tells)), guide.id, sentences)] ?? {};
    for (const [answer, is] of Object.entries(page))
      (found[answer] ??= {})[key.slice(DETAIL.length)] = is;
  }
  return Object.keys(found).length > 0 ? found : undefined;
}

function deskNode(guide: Guide, node: GuideNode, left: Remaining | undefined): DeskNode {
  const { caution, timer, takesError, breakerStaysOff } = node;
  return defined({
    ...{ more: left && moreQuestions(left), caution, timer, each: promiseOf(node) },
    tells: tellsOf(guide, node),
    takesError: takesError || undefined,
    ahead: isAhead(node) || undefined,
    breakerStaysOff: breakerStaysOff || undefined,
  });
}

function nodesOf(guide: Guide): Record<string, DeskNode> {
  const left = remaining(guide);
  return Object.fromEntries(
    [...guide.nodes.values()].map((node) => [node.id, deskNode(guide, node, left.get(node.id))]),
  );
}

const SAID = [
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
] as const;

/** What the desk loads for a guide. */
export function deskPart(language: string, guide: Guide): DeskPart {
  const release = releases().at(-1);
  return {
    ...(release ? { release: partOfRelease(release, guide.id, true) } : {}),
    nodes: nodesOf(guide),
    calls: makeCalls(language, guide, true),
    texts: guideTexts(language, guide, SAID, deskNamespace),
  };
}
