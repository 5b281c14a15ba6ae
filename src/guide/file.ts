import { fileSchema, guideForm } from './schema.ts';
import type {
  FileAnswer,
  FileNode,
  FileOptional,
  FileRule,
  FileWiring,
  NodeForm,
} from './schema.ts';
import { isRecord, shapeTroubles } from './shape.ts';
import type { Found } from './shape.ts';
import type { YamlText } from './yaml.ts';

/** A node of the file whose own shape is right, with those of its answers that are. */
export interface AuthoredNode {
  readonly name: string;
  readonly node: FileNode;
  readonly answers: ReadonlyMap<string, FileAnswer>;
  /** The block it was taken from. */
  readonly block?: string;
}

/** What could be read of a guide's file. */
export interface AuthoredGuide {
  readonly id: string;
  readonly tracks: readonly string[];
  readonly start: string;
  readonly entries: readonly string[];
  /** None where one of them is malformed: that is told already. */
  readonly rules: readonly FileRule[];
  /** How the guide goes on from the exits of blocks; none where something around it is malformed. */
  readonly blocks: FileWiring | undefined;
  readonly optional: FileOptional;
  readonly nodes: ReadonlyMap<string, AuthoredNode>;
  /** Every node's name, broken ones too, so that a broken node is not also "unknown". */
  readonly names: ReadonlySet<string>;
}

/** Troubles that deserve a name of their own, found before the schema sees the node. */
function named(name: string, raw: unknown, text: YamlText): Found[] {
  if (!isRecord(raw)) return [];
  const found: Found[] = [];
  const place = text.keyAt(['nodes', name]);
  const { kind, action, call, answers } = raw;
  if (kind === 'step' && action === undefined)
    found.push({ code: 'step-without-action', node: name, place });
  if (kind === 'stop' && (call === undefined || (Array.isArray(call) && call.length === 0)))
    found.push({ code: 'stop-without-call', node: name, place });
  if ((kind === 'stop' || kind === 'finish') && answers !== undefined)
    found.push({
      code: 'end-with-answers',
      node: name,
      place: text.keyAt(['nodes', name, 'answers']),
    });
  if ((kind === 'question' || kind === 'step') && isRecord(answers) && !('unsure' in answers))
    found.push({
      code: 'unsure-missing',
      node: name,
      place: text.keyAt(['nodes', name, 'answers']),
    });
  return found;
}

/** The schema's own words for a trouble that `named` has told better already. */
function toldBetter(found: Found, told: readonly Found[]): boolean {
  const has = (code: Found['code']): boolean => told.some((other) => other.code === code);
  if (found.code === 'key-missing')
    return (
      (found.key === 'action' && has('step-without-action')) ||
      (found.key === 'call' && has('stop-without-call'))
    );
  if (found.code === 'key-unknown') return found.key === 'answers' && has('end-with-answers');
  return found.code === 'value-wrong' && has('stop-without-call') && found.path.endsWith('.call');
}

function readNode(
  name: string,
  raw: unknown,
  text: YamlText,
  form: NodeForm,
  troubles: Found[],
): AuthoredNode | undefined {
  const base = ['nodes', name];
  const told = named(name, raw, text);
  troubles.push(...told);
  const node = form.node.safeParse(raw);
  if (!node.success)
    troubles.push(
      ...shapeTroubles(node.error, text, base).filter((found) => !toldBetter(found, told)),
    );
  const answers = new Map<string, FileAnswer>();
  for (const [id, rawAnswer] of Object.entries(
    isRecord(raw) && isRecord(raw['answers']) ? raw['answers'] : {},
  )) {
    const answer = form.answer.safeParse(rawAnswer);
    if (answer.success) answers.set(id, answer.data);
    else troubles.push(...shapeTroubles(answer.error, text, [...base, 'answers', id]));
  }
  return node.success ? { name, node: node.data, answers } : undefined;
}

/** The frame as it was meant, so that one slip in it does not hide what else is wrong. */
function meant(
  raw: unknown,
): Omit<AuthoredGuide, 'nodes' | 'names' | 'rules' | 'blocks' | 'optional'> | undefined {
  if (!isRecord(raw)) return undefined;
  const { id, tracks, start, entries } = raw;
  if (typeof start !== 'string' || !Array.isArray(tracks)) return undefined;
  const names = (list: unknown): string[] =>
    Array.isArray(list) ? list.filter((one) => typeof one === 'string') : [];
  const frame = { id: String(id), tracks: names(tracks), start, entries: names(entries) };
  return frame.tracks.length > 0 ? frame : undefined;
}

/** The nodes of a file that could be read, and the troubles of the others. */
export function readNodes(
  text: YamlText,
  form: NodeForm,
): {
  readonly nodes: ReadonlyMap<string, AuthoredNode>;
  /** Every node's name, broken ones too. */
  readonly names: ReadonlySet<string>;
  readonly troubles: readonly Found[];
} {
  const troubles: Found[] = [];
  const raw = isRecord(text.value) && isRecord(text.value['nodes']) ? text.value['nodes'] : {};
  const nodes = new Map<string, AuthoredNode>();
  for (const [name, rawNode] of Object.entries(raw)) {
    const node = readNode(name, rawNode, text, form, troubles);
    if (node) nodes.set(name, node);
  }
  return { nodes, names: new Set(Object.keys(raw)), troubles };
}

/**
 * Read what can be read of a guide's file and collect every trouble of its shape.
 * Returns no guide when the frame around the nodes says neither tracks nor start.
 */
export function readFile(text: YamlText): {
  readonly guide: AuthoredGuide | undefined;
  readonly troubles: readonly Found[];
} {
  const frame = fileSchema.safeParse(text.value);
  const { troubles, ...read } = readNodes(text, guideForm);
  const head = meant(text.value);
  const { rules, blocks, optional } = frame.success
    ? frame.data
    : { rules: [], blocks: undefined, optional: {} };
  return {
    guide: head && { ...head, rules, blocks, optional, ...read },
    troubles: [...(frame.success ? [] : shapeTroubles(frame.error, text, [])), ...troubles],
  };
}
