import { BREAKER_OFF } from './flags.ts';
import type { AuthoredGuide, AuthoredNode } from './file.ts';
import type { Found } from './shape.ts';
import type { YamlText } from './yaml.ts';

/**
 * Every name in the file that should name something else, and does not.
 * @param flags those an answer may raise; left out, they are not checked
 */
export function checkNames(
  guide: AuthoredGuide,
  text: YamlText,
  flags?: readonly string[],
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
    for (const { target, at } of targets)
      if (!target.includes('/') && !guide.names.has(target))
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

  guide.tracks.forEach((track, index) => {
    if (guide.tracks.indexOf(track) !== index)
      found.push({ code: 'track-repeated', track, place: text.valueAt(['tracks', index]) });
  });
  const pages = new Map<string, Set<string>>();
  for (const { name, node, answers } of guide.nodes.values()) {
    const known = pages.get(node.text ?? name) ?? new Set();
    pages.set(node.text ?? name, new Set([...known, ...answers.keys()]));
  }
  guide.rules.forEach((rule, index) => {
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
  guide.entries.forEach((entry, index) => {
    if (!guide.names.has(entry))
      found.push({ code: 'entry-missing', entry, place: text.valueAt(['entries', index]) });
  });
  const start = guide.nodes.get(guide.start);
  if (!guide.names.has(guide.start))
    found.push({ code: 'start-unknown', start: guide.start, place: text.valueAt(['start']) });
  else if (start && start.node.kind !== 'question')
    found.push({ code: 'start-not-question', start: guide.start, place: text.valueAt(['start']) });
  for (const node of guide.nodes.values()) {
    const path = ['nodes', node.name];
    if ('only' in node.node && node.node.only !== undefined)
      checkTrack(node.node.only, [...path, 'only']);
    if (node.node.text !== undefined && !guide.names.has(node.node.text))
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
