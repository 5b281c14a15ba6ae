import { cleanCooling, reachCooling } from '../physics/cooldown.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { compose, noBlocks } from './blocks.ts';
import type { Blocks } from './blocks.ts';
import { checkFrame, checkNodes, checkRules } from './check-names.ts';
import { expand } from './expand.ts';
import type { Copy } from './expand.ts';
import { readFile } from './file.ts';
import type { AuthoredGuide, AuthoredNode } from './file.ts';
import { BREAKER_OFF } from './flags.ts';
import { joinGuides } from './join.ts';
import type { GuideSource } from './join.ts';
import { depthFirst } from './loops.ts';
import type { GuideProblem } from './problem.ts';
import type { FileRule } from './schema.ts';
import { checkOptional, without } from './optional.ts';
import { inOrder } from './shape.ts';
import type { Found } from './shape.ts';
import { switches } from './types.ts';
import type {
  Answer,
  AnswerId,
  Guide,
  GuideId,
  GuideNode,
  NodeId,
  Rule,
  TextId,
  Timer,
} from './types.ts';
import { readYaml } from './yaml.ts';
import type { YamlText } from './yaml.ts';

function timerOf(timer: number | 'cooling' | 'reach' | undefined): { timer?: Timer } {
  if (timer === undefined) return {};
  if (typeof timer === 'number') return { timer: { kind: 'fixed', minutes: [timer, timer] } };
  const { earliest, latest } = timer === 'reach' ? reachCooling : cleanCooling;
  const reach = timer === 'reach' ? { reach: true as const } : {};
  return { timer: { kind: 'cooling', minutes: [earliest, latest], ...reach } };
}

function answersOf(copy: Copy): Answer[] {
  return copy.edges.map(({ answer, to }) => {
    const given = copy.authored.answers.get(answer);
    return {
      id: answer as AnswerId,
      to: to as NodeId,
      sets: given?.sets ?? [],
      clears: given?.clears ?? [],
      ...(given?.flag === undefined ? {} : { flag: given.flag }),
      ...(given?.['heat-ended'] === undefined ? {} : { heatEnded: given['heat-ended'] }),
      ...(given?.confirm ? { confirm: true as const } : {}),
      ...(given?.drawing === undefined ? {} : { drawing: given.drawing }),
    };
  });
}

function nodeOf(guide: AuthoredGuide, copy: Copy): GuideNode {
  const { node, name } = copy.authored;
  const stop = node.kind === 'stop' ? node : undefined;
  const asks = node.kind === 'question' || node.kind === 'step' ? node : undefined;
  return {
    id: copy.id as NodeId,
    guide: guide.id as GuideId,
    page: name,
    ...(copy.authored.block === undefined ? {} : { block: copy.authored.block }),
    ...(copy.track === undefined ? {} : { track: copy.track }),
    sentences: (node.text ?? name) as TextId,
    kind: node.kind,
    answers: answersOf(copy),
    ...(node.kind === 'step' ? { action: node.action } : {}),
    heat: node.kind === 'step' && node.heat,
    ...(node.care === undefined ? {} : { caution: node.care }),
    ...timerOf(asks?.timer),
    takesError: asks?.['takes-error'] ?? false,
    call: stop?.call ?? [],
    urgency: 'urgency' in node ? node.urgency : 'none',
    ...(node.kind === 'finish' && node.done ? { done: true } : {}),
    breakerStaysOff: stop?.['breaker-stays-off'] ?? false,
    ...(stop?.['breaker-stays-off'] ? { flag: BREAKER_OFF } : {}),
    ...(stop?.danger === undefined ? {} : { danger: stop.danger as AnswerId }),
    ...(node.drawing === undefined ? {} : { drawing: node.drawing }),
  };
}

/** The start's answers that lead to stops, but for `unsure`, which every page has itself. */
function exitsOf(start: GuideNode, nodes: ReadonlyMap<NodeId, GuideNode>): Answer[] {
  return start.answers.filter(
    (answer) => nodes.get(answer.to)?.kind === 'stop' && answer.id !== 'unsure',
  );
}

function ruleOf(rule: FileRule): Rule {
  if ('ends-at' in rule) return { kind: 'ends-at', answer: rule.answer, ends: rule['ends-at'] };
  const { page } = rule;
  if ('most' in rule) return { kind: 'most', page, most: rule.most };
  if ('needs' in rule) return { kind: 'needs', page, answer: rule.needs };
  const { 'never-after': answer, unless } = rule;
  return { kind: 'never-after', page, answer, ...(unless === undefined ? {} : { unless }) };
}

/** Troubles that show only once the tracks are followed. */
function checkCopies(
  guide: AuthoredGuide,
  copies: ReadonlyMap<string, Copy>,
  text: YamlText,
): Found[] {
  const found: Found[] = [];
  const used = new Set<AuthoredNode>([...copies.values()].map((copy) => copy.authored));
  for (const node of guide.nodes.values())
    // A page of a block that no guide comes to is told at its own place.
    if (!used.has(node) && node.block === undefined)
      found.push({
        code: 'node-unreachable',
        node: node.name,
        place: text.keyAt(['nodes', node.name]),
      });
  // The same loop shows on every track; tell it once, by the author's names.
  const told = new Set<string>();
  const { loops } = depthFirst(
    copies.keys(),
    (id) => copies.get(id)?.edges.map(({ to }) => to) ?? [],
  );
  for (const loop of loops) {
    const nodes = loop.map((id) => copies.get(id)?.authored.name ?? id);
    const key = nodes.toSorted().join(' ');
    if (told.has(key)) continue;
    told.add(key);
    found.push({ code: 'loop', nodes, place: text.keyAt(['nodes', nodes[0] ?? '']) });
  }
  return found;
}

function checkHidden(guide: AuthoredGuide, exits: readonly Answer[], text: YamlText): Found[] {
  const names = new Set<string>(exits.map((exit) => exit.id));
  return [...guide.nodes.values()]
    .filter((node) => node.name !== guide.start)
    .flatMap((node) =>
      [...node.answers.keys()]
        .filter((answer) => names.has(answer))
        .map((answer): Found => {
          const place = text.keyAt(['nodes', node.name, 'answers', answer]);
          return { code: 'danger-hidden', node: node.name, answer, place };
        }),
    );
}

/** The guide's nodes in the order of the file, a node's copies in the order of the tracks. */
function inFileOrder(guide: AuthoredGuide, copies: ReadonlyMap<string, Copy>): Copy[] {
  const placeOf = new Map([...guide.nodes.keys()].map((name, index) => [name, index]));
  const rank = (copy: Copy): number =>
    (placeOf.get(copy.authored.name) ?? 0) * (guide.tracks.length + 1) +
    (copy.track === undefined ? 0 : guide.tracks.indexOf(copy.track));
  return [...copies.values()].toSorted((a, b) => rank(a) - rank(b));
}

/**
 * Read a guide from the text of its `graph.yaml`. Every problem of the file is
 * returned, in the order of the file, each with the place it was found at; `file`
 * is only copied into the problems. `blocks` are those it may take pages from,
 * `off` the switches that are off.
 */
export function loadGuide(
  source: string,
  file: string,
  blocks?: Blocks,
  off?: ReadonlySet<string>,
): Result<Guide, readonly GuideProblem[]> {
  const part = loadPart(source, file, blocks, off);
  if (!part.ok) return part;
  const joined = joinGuides([part.value]);
  return joined.ok ? ok(joined.value[0] ?? part.value.guide) : joined;
}

/** Where all flags are not known: those that are raised. */
function raisedIn(nodes: Iterable<GuideNode>): string[] {
  const raised = [...nodes].flatMap(({ flag, answers }) => [
    flag,
    ...answers.map((one) => one.flag),
  ]);
  return [...new Set(raised.filter((flag) => flag !== undefined))];
}

/** The same for a guide that may hand over to others: `joinGuides` then makes it whole. */
export function loadPart(
  source: string,
  file: string,
  blocks: Blocks = noBlocks,
  off: ReadonlySet<string> = new Set(),
): Result<GuideSource, readonly GuideProblem[]> {
  const written = readYaml(source);
  const broken = written.errors.map((error): Found => ({ code: 'yaml-syntax', ...error }));
  // A text that is not YAML has no dependable values to look into.
  if (broken.length > 0) return fail(inOrder(broken, file));

  const { guide: own, troubles } = readFile(written);
  if (!own) return fail(inOrder(troubles, file));
  const { guide: whole, text, troubles: onBlocks } = compose(own, written, blocks);
  const authored = without(whole, off);
  const { flags } = blocks;
  const found = [
    ...troubles,
    ...onBlocks,
    ...checkFrame(authored, text),
    ...checkOptional(whole, text),
    ...checkRules(own.rules, whole.nodes.values(), text),
    ...checkNodes(authored, text, { flags, texts: blocks.of }),
  ];
  const { copies, handOvers, troubles: onTracks } = expand(authored, text);
  // With nodes or answers left out, "unreachable" would blame the wrong ones.
  const onCopies = checkCopies(authored, copies, text).filter(
    (trouble) => trouble.code !== 'node-unreachable' || troubles.length === 0,
  );
  found.push(...onTracks, ...onCopies);

  const nodes = new Map(
    inFileOrder(authored, copies).map((copy) => [copy.id as NodeId, nodeOf(authored, copy)]),
  );
  const start = nodes.get(authored.start as NodeId);
  const exits = start ? exitsOf(start, nodes) : [];
  found.push(...checkHidden(authored, exits, text));
  if (found.length > 0 || !start) return fail(inOrder(found, file));
  const rules = authored.rules.map(ruleOf);
  const { tracks, entries } = authored;
  const changing = switches.filter((name) => authored.optional[name]);
  const guide: Guide = {
    id: authored.id as GuideId,
    start: start.id,
    nodes,
    exits,
    flags: flags ?? raisedIn(nodes.values()),
    tracks,
    ...(changing.length > 0 ? { switches: changing } : {}),
    rules,
  };
  return ok({ file, guide, entries, handOvers });
}
