/** Pages that a copy can do without: with a switch off, what led to them leads elsewhere. */
import type { AuthoredGuide, AuthoredNode } from './file.ts';
import type { FileAnswer, FileRule } from './schema.ts';
import type { Found } from './shape.ts';
import type { YamlText } from './yaml.ts';

/** Pages under `optional` that the guide does not have. */
export function checkOptional({ optional, names }: AuthoredGuide, text: YamlText): Found[] {
  return Object.entries(optional).flatMap(([key, { pages, instead }]) =>
    [...pages.map((name, index) => [name, 'pages', index] as const), [instead, 'instead'] as const]
      .filter(([name, part]) => !names.has(name) || (part === 'instead' && pages.includes(name)))
      .map(([name, ...path]): Found => {
        const place = text.valueAt(['optional', key, ...path]);
        return { code: 'optional-unknown', name, place };
      }),
  );
}

/** A rule where pages are gone; none where it is about one of them, or forbids after one. */
function kept(
  rule: FileRule,
  lead: (page: string) => string,
  isGone: (name: string) => boolean,
): FileRule[] {
  if ('ends-at' in rule)
    return isGone(rule.answer) ? [] : [{ ...rule, 'ends-at': rule['ends-at'].map(lead) }];
  if (isGone(rule.page)) return [];
  return 'never-after' in rule && isGone(rule['never-after']) ? [] : [rule];
}

/** A guide, pages of blocks in it, as it is with these switches off. */
export function without(guide: AuthoredGuide, off: ReadonlySet<string>): AuthoredGuide {
  const gone = new Map(
    Object.entries(guide.optional)
      .filter(([name]) => off.has(name))
      .flatMap(([, { pages, instead }]) => pages.map((page) => [page, instead] as const)),
  );
  if (gone.size === 0) return guide;
  const lead = (page: string): string => gone.get(page) ?? page;
  const led = (answer: FileAnswer): FileAnswer => ({
    ...answer,
    to:
      typeof answer.to === 'string'
        ? lead(answer.to)
        : Object.fromEntries(Object.entries(answer.to).map(([track, to]) => [track, lead(to)])),
  });
  const stay = [...guide.nodes].filter(([name]) => !gone.has(name));
  const nodes = new Map(
    stay.map(([name, node]): [string, AuthoredNode] => [
      name,
      { ...node, answers: new Map([...node.answers].map(([id, answer]) => [id, led(answer)])) },
    ]),
  );
  const texts = new Set(stay.map(([name, { node }]) => node.text ?? name));
  const isGone = (name: string): boolean => !texts.has(name.split('.')[0] ?? '');
  return {
    ...guide,
    nodes,
    names: new Set([...guide.names].filter((name) => !gone.has(name))),
    rules: guide.rules.flatMap((rule) => kept(rule, lead, isGone)),
  };
}
