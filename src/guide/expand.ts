import { parseId } from './ids.ts';
import { unresolved } from './join.ts';
import type { HandOver } from './join.ts';
import type { FileAnswer } from './schema.ts';
import type { AuthoredGuide, AuthoredNode } from './file.ts';
import type { Found } from './shape.ts';
import type { YamlText } from './yaml.ts';

/** One answer of one copy, with the copy it leads to. */
export interface Edge {
  readonly answer: string;
  readonly to: string;
}

/** A node on one track; stops and finishes are one copy on no track. */
export interface Copy {
  readonly id: string;
  readonly track: string | undefined;
  readonly authored: AuthoredNode;
  readonly edges: readonly Edge[];
}

/** What following a guide's answers makes. */
export interface Expanded {
  readonly copies: ReadonlyMap<string, Copy>;
  readonly handOvers: readonly HandOver[];
  readonly troubles: readonly Found[];
}

/** `to` and `track` may be one name, or one name for each track. */
function forTrack(value: FileAnswer['to'], track: string): string | undefined {
  return typeof value === 'string' ? value : value[track];
}

function isEnd(authored: AuthoredNode): boolean {
  return authored.node.kind === 'stop' || authored.node.kind === 'finish';
}

/**
 * Follow every answer from the start and make one copy of a node for each track it
 * is reached on. The guide's first track keeps the plain names; copies on another
 * track are called `name-track`.
 */
export function expand(guide: AuthoredGuide, text: YamlText): Expanded {
  const troubles: Found[] = [];
  const seen = new Set<string>();
  const reached = new Map<string, { authored: AuthoredNode; track: string | undefined }>();
  const copies = new Map<string, Copy>();
  const handOvers: HandOver[] = [];

  /** One trouble of the file shows on every track; tell it once. */
  function tell(trouble: Found): void {
    const key = JSON.stringify(trouble);
    if (!seen.has(key)) troubles.push(trouble);
    seen.add(key);
  }

  function idOf(name: string, track: string | undefined): string {
    return track === undefined || track === guide.tracks[0] ? name : `${name}-${track}`;
  }

  /** The copy an answer leads to, entered among the reached ones. */
  function follow(from: AuthoredNode, answer: string, given: FileAnswer, track: string) {
    const path = ['nodes', from.name, 'answers', answer];
    const there = forTrack(given.to, track);
    if (there?.includes('/')) return leave(from, answer, given, track, there);
    const moved = given.track === undefined ? track : (forTrack(given.track, track) ?? track);
    const target = forTrack(given.to, moved);
    const told = () => ({ node: from.name, answer, place: text.valueAt([...path, 'to']) });
    if (target === undefined || target.includes('/')) {
      tell({ code: 'target-missing', track: moved, ...told() });
      return undefined;
    }
    const authored = guide.nodes.get(target);
    // A node that is in the file but broken has been told already; others by `checkNames`.
    if (!authored) return undefined;
    const { node } = authored;
    if ('only' in node && node.only !== undefined && node.only !== moved)
      tell({ code: 'wrong-track', target, track: moved, only: node.only, ...told() });
    return enter(authored, moved);
  }

  /** An answer that leads into another guide; `track`, if any, is one of that guide. */
  function leave(
    from: AuthoredNode,
    answer: string,
    given: FileAnswer,
    track: string,
    there: string,
  ): string {
    const { guide: other = '', name: target } = parseId(there);
    const on = given.track === undefined ? undefined : forTrack(given.track, track);
    const place = text.valueAt(['nodes', from.name, 'answers', answer, 'to']);
    const handOver = { node: from.name, answer, guide: other, target, track: on, place };
    const same = (one: HandOver): boolean => JSON.stringify(one) === JSON.stringify(handOver);
    if (!handOvers.some(same)) handOvers.push(handOver);
    return unresolved(handOver);
  }

  function enter(authored: AuthoredNode, track: string): string {
    const on = isEnd(authored) ? undefined : track;
    const id = idOf(authored.name, on);
    const other = reached.get(id);
    if (other === undefined) reached.set(id, { authored, track: on });
    else if (other.authored !== authored)
      tell({
        code: 'name-taken',
        node: authored.name,
        id,
        place: text.keyAt(['nodes', authored.name]),
      });
    return id;
  }

  const start = guide.nodes.get(guide.start);
  if (start && guide.tracks[0] !== undefined) enter(start, guide.tracks[0]);
  // A Map's iterator also visits what is added while it runs.
  for (const [id, { authored, track }] of reached) {
    const edges: Edge[] = [];
    if (track !== undefined)
      for (const [answer, given] of authored.answers) {
        const to = follow(authored, answer, given, track);
        if (to !== undefined) edges.push({ answer, to });
      }
    copies.set(id, { id, track, authored, edges });
  }
  return { copies, handOvers, troubles };
}
