import { stringify } from 'yaml';
import { compose, exitOf } from '../../../../src/guide/blocks.ts';
import type { Blocks } from '../../../../src/guide/blocks.ts';
import { readFile } from '../../../../src/guide/file.ts';
import { readYaml } from '../../../../src/guide/yaml.ts';

interface RawFile {
  nodes: Record<string, { answers?: Record<string, object> }>;
}

/** A guide's file with the pages it takes written out in it: no other file is needed. */
export function writtenOut(source: string, blocks: Blocks): string {
  const text = readYaml(source);
  const { guide: own } = readFile(text);
  if (!own) throw new Error('The file cannot be read.');
  const { guide } = compose(own, text, blocks);
  const raw = text.value as RawFile;
  const nodes = [...guide.nodes.values()].map(({ name, block }): [string, unknown] => {
    if (block === undefined) return [name, raw.nodes[name]];
    const taken = blocks.of.get(name);
    const written = (taken?.text.value as RawFile).nodes[name];
    const wired = Object.entries(written?.answers ?? {}).map(([id, answer]): [string, unknown] => {
      const exit = exitOf(taken?.nodes.get(name)?.answers.get(id) ?? { to: '' });
      return [id, exit === undefined ? answer : { ...answer, ...own.blocks?.[block]?.[exit] }];
    });
    return [name, wired.length > 0 ? { ...written, answers: Object.fromEntries(wired) } : written];
  });
  const pages = new Set([...guide.nodes.values()].map(({ name, node }) => node.text ?? name));
  const rules = guide.rules.map((rule) =>
    'ends-at' in rule
      ? { ...rule, 'ends-at': rule['ends-at'].filter((page) => pages.has(page)) }
      : 'unless' in rule && !pages.has(rule.unless?.split('.')[0] ?? '')
        ? { ...rule, unless: undefined }
        : rule,
  );
  const whole = { ...raw, blocks: undefined, rules, nodes: Object.fromEntries(nodes) };
  // A guide's file has no aliases: see `readYaml`.
  return stringify(whole, { aliasDuplicateObjects: false });
}
