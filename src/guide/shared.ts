import { stringify } from 'yaml';
import { isRecord } from './shape.ts';
import { readYaml } from './yaml.ts';
import type { Path, YamlText } from './yaml.ts';

/**
 * The danger question and its emergency stops in the authors' form, the same in every
 * guide that takes them. Where the answer `none` leads is each guide's own to say.
 */
export interface Shared {
  readonly start: string;
  readonly nodes: Readonly<Record<string, unknown>>;
  /** All flags an answer may raise, in order; where they are not known, any may be raised. */
  readonly flags?: readonly string[] | undefined;
}

/** The answer of the danger question that goes on. */
const NONE = 'none';

/** The danger question with `none` leading to a guide's own first page. */
function goingOn(question: unknown, to: unknown): unknown {
  if (!isRecord(question)) return question;
  const answers = isRecord(question['answers']) ? question['answers'] : {};
  const none = isRecord(answers[NONE]) ? answers[NONE] : {};
  return { ...question, answers: { ...answers, [NONE]: { ...none, to } } };
}

/**
 * A guide's text with the shared danger pages in it, where it asks for them by `dangers`;
 * any other text as it is. The guide's own node of the same name takes the place of the
 * shared one. Places of what is shared are those of `dangers` in the guide's file.
 */
export function withShared(text: YamlText, shared: Shared): YamlText {
  const raw = text.value;
  if (!isRecord(raw) || raw['dangers'] === undefined) return text;
  const { dangers } = raw;
  const own = isRecord(raw['nodes']) ? raw['nodes'] : {};
  const { [shared.start]: question, ...stops } = shared.nodes;
  const none = isRecord(dangers) ? dangers[NONE] : undefined;
  const value = {
    ...raw,
    start: raw['start'] ?? shared.start,
    nodes: { [shared.start]: goingOn(question, none), ...own, ...stops, ...own },
  };
  const here = (path: Path): Path => {
    const [top, name] = path;
    if (top === 'start' && raw['start'] === undefined) return ['dangers'];
    const taken = top === 'nodes' && typeof name === 'string' && name in shared.nodes;
    if (!taken || name in own) return path;
    return path.includes(NONE) ? ['dangers', NONE] : ['dangers'];
  };
  return {
    ...text,
    value,
    keyAt: (path) => text.keyAt(here(path)),
    valueAt: (path) => text.valueAt(here(path)),
  };
}

/** A page for `none` to lead to, so that the shared pages can be checked as a guide is. */
const BEYOND = 'beyond';

/** The shared file as a guide of its own: the danger pages and one page beyond them. */
export function asGuide(text: YamlText): YamlText {
  const raw = isRecord(text.value) ? text.value : {};
  const nodes = isRecord(raw['nodes']) ? raw['nodes'] : {};
  const start = String(raw['start']);
  return {
    ...text,
    value: {
      ...raw,
      id: 'shared',
      tracks: ['all'],
      nodes: {
        ...nodes,
        [start]: goingOn(nodes[start], BEYOND),
        [BEYOND]: { kind: 'finish', urgency: 'none' },
      },
    },
  };
}

/** A guide's file with the shared pages written out in it: no other file is needed. */
export function writtenOut(source: string, shared: Shared): string {
  const { value } = withShared(readYaml(source), shared);
  const whole = isRecord(value) ? { ...value, dangers: undefined } : value;
  // A guide's file has no aliases: see `readYaml`.
  return stringify(whole, { aliasDuplicateObjects: false });
}
