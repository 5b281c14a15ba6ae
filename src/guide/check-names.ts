import { BREAKER_OFF } from './flags.ts';
import type { AuthoredGuide, AuthoredNode } from './file.ts';
import type { FileRule } from './schema.ts';
import type { Found } from './shape.ts';
import type { YamlText } from './yaml.ts';

/** What nodes may name besides each other. */
export interface Known {
  /** Flags an answer may raise; left out, they are not checked. */
  readonly flags?: readonly string[] | undefined;
  /** Pages that are not in the file, whose sentences may be borrowed. */
  readonly texts?: { readonly has: (page: string) => boolean } | undefined;
  /** The exits of a block; left out, an answer may lead into another guide. */
  readonly exits?: readonly string[];
}

/** Every name in a file's nodes that should name something else, and does not. */
export function checkNodes(
  guide: Pick<AuthoredGuide, 'tracks' | 'names' | 'nodes'>,
  text: YamlText,
  { flags, texts, exits }: Known,
): Found[] {
  const tracks = new Set(guide.tracks);
  const found: Found[] = [];

  function checkTrack(track: string, path: readonly string[], key = false): void {
    if (!tracks.has(track))
      found.push({
        code: 'track-unknown',
        path: path.join('.'),
        track,
        place: key ? text.keyAt(path) : text.valueAt(path),
      });
  }

  function checkFlag(
    flag: string | undefined,
    path: readonly string[],
    at: { readonly node: string; readonly answer?: string },
  ): void {
    if (flag !== undefined && flags?.includes(flag) === false)
      found.push({ code: 'flag-unknown', ...at, flag, known: flags, place: text.valueAt(path) });
  }

  function checkAnswer(node: AuthoredNode, id: string): void {
    const answer = node.answers.get(id);
    if (!answer) return;
    const path = ['nodes', node.name, 'answers', id];
    const targets =
      typeof answer.to === 'string'
        ? [{ target: answer.to, at: [...path, 'to'] }]
        : Object.entries(answer.to).map(([track, target]) => {
            checkTrack(track, [...path, 'to', track], true);
            return { target, at: [...path, 'to', track] };
          });
    // A node of another guide, and its track, are checked where the guides are joined.
    const leaves = targets.some(({ target }) => target.includes('/'));
    const known = (target: string): boolean =>
      guide.names.has(target) ||
      (exits?.some((exit) => target === `exit/${exit}`) ?? target.includes('/'));
    for (const { target, at } of targets)
      if (!known(target))
        found.push({
          code: 'target-unknown',
          node: node.name,
          answer: id,
          target,
          place: text.valueAt(at),
        });
    if (typeof answer.track === 'string') {
      if (!leaves) checkTrack(answer.track, [...path, 'track']);
    } else
      for (const [from, to] of Object.entries(answer.track ?? {})) {
        checkTrack(from, [...path, 'track', from], true);
        if (!leaves) checkTrack(to, [...path, 'track', from]);
      }
    checkFlag(answer.flag, [...path, 'flag'], { node: node.name, answer: id });
    for (const fact of answer.sets.filter((set) => answer.clears.includes(set)))
      found.push({
        code: 'fact-set-and-cleared',
        node: node.name,
        fact,
        place: text.keyAt(path),
      });
  }

  for (const node of guide.nodes.values()) {
    const path = ['nodes', node.name];
    if ('only' in node.node && node.node.only !== undefined)
      checkTrack(node.node.only, [...path, 'only']);
    if (
      node.node.text !== undefined &&
      !(guide.names.has(node.node.text) || texts?.has(node.node.text))
    )
      found.push({
        code: 'text-unknown',
        node: node.name,
        text: node.node.text,
        place: text.valueAt([...path, 'text']),
      });
    if (node.node.kind === 'stop' && node.node['breaker-stays-off'])
      checkFlag(BREAKER_OFF, [...path, 'breaker-stays-off'], { node: node.name });
    for (const id of node.answers.keys()) checkAnswer(node, id);
  }
  return found;
}

/** Rules that name a page or an answer that is not among the nodes. */
export function checkRules(
  rules: readonly FileRule[],
  nodes: Iterable<AuthoredNode>,
  text: YamlText,
): Found[] {
  const found: Found[] = [];
  const pages = new Map<string, Set<string>>();
  for (const { name, node, answers } of nodes) {
    const known = pages.get(node.text ?? name) ?? new Set();
    pages.set(node.text ?? name, new Set([...known, ...answers.keys()]));
  }
  rules.forEach((rule, index) => {
    const check = (key: string, value: string): void => {
      const [page = '', answer] = value.split('.');
      if (!(answer === undefined ? pages.has(page) : pages.get(page)?.has(answer)))
        found.push({
          code: 'rule-unknown',
          name: value,
          place: text.valueAt(['rules', index, key]),
        });
    };
    for (const [key, value] of Object.entries(rule))
      for (const one of [value].flat()) if (typeof one === 'string') check(key, one);
  });
  return found;
}

/** The same of what stands around a guide's nodes, its rules apart. */
export function checkFrame(guide: AuthoredGuide, text: YamlText): Found[] {
  const found: Found[] = [];
  guide.tracks.forEach((track, index) => {
    if (guide.tracks.indexOf(track) !== index)
      found.push({ code: 'track-repeated', track, place: text.valueAt(['tracks', index]) });
  });
  guide.entries.forEach((entry, index) => {
    if (!guide.names.has(entry))
      found.push({ code: 'entry-missing', entry, place: text.valueAt(['entries', index]) });
  });
  const start = guide.nodes.get(guide.start);
  if (!guide.names.has(guide.start))
    found.push({ code: 'start-unknown', start: guide.start, place: text.valueAt(['start']) });
  else if (start && start.node.kind !== 'question')
    found.push({ code: 'start-not-question', start: guide.start, place: text.valueAt(['start']) });
  return found;
}
