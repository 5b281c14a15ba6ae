/** Blocks: pages that several guides take, written once and compiled into each of them. */
import { checkNodes, checkRules } from './check-names.ts';
import { readNodes } from './file.ts';
import type { AuthoredGuide, AuthoredNode } from './file.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import type { GuideProblem } from './problem.ts';
import { blockForm, blockSchema } from './schema.ts';
import type { FileAnswer, FileRule } from './schema.ts';
import { inOrder, shapeTroubles } from './shape.ts';
import type { Found } from './shape.ts';
import type { Guide } from './types.ts';
import { readYaml } from './yaml.ts';
import type { Path, SourceFile, YamlText } from './yaml.ts';

/** One file of `content/blocks`. */
export interface Block {
  /** The file's name without its ending. */
  readonly id: string;
  readonly file: string;
  /** Names under which a guide wires the way on. */
  readonly exits: readonly string[];
  readonly rules: readonly FileRule[];
  readonly nodes: ReadonlyMap<string, AuthoredNode>;
  /** Every page's name, broken ones too. */
  readonly names: ReadonlySet<string>;
  readonly text: YamlText;
}

/** What guides may take, and what all of them share besides. */
export interface Blocks {
  /** In the order of their names. */
  readonly list: readonly Block[];
  /** Page → its block: no name stands in two. */
  readonly of: ReadonlyMap<string, Block>;
  /** All flags an answer may raise, in order; where they are not known, any may be raised. */
  readonly flags?: readonly string[] | undefined;
}

export const noBlocks: Blocks = { list: [], of: new Map() };

const EXIT = 'exit/';

/** The exit that an answer of a block takes, if it takes one. */
export function exitOf({ to }: Pick<FileAnswer, 'to'>): string | undefined {
  return typeof to === 'string' && to.startsWith(EXIT) ? to.slice(EXIT.length) : undefined;
}

function answersOf(nodes: Iterable<AuthoredNode>): FileAnswer[] {
  return [...nodes].flatMap(({ answers }) => [...answers.values()]);
}

/** Read one file by itself; names of other blocks' pages are checked once all are read. */
function readBlock({ source, file }: SourceFile): { block: Block; troubles: readonly Found[] } {
  const text = readYaml(source);
  const id = file.replace(/^.*[\\/]|\.yaml$/g, '');
  const nothing = { id, file, exits: [], rules: [], text };
  if (text.errors.length > 0)
    return {
      block: { ...nothing, nodes: new Map(), names: new Set() },
      troubles: text.errors.map((error) => ({ code: 'yaml-syntax', ...error })),
    };
  const frame = blockSchema.safeParse(text.value);
  const { troubles, ...read } = readNodes(text, blockForm);
  return frame.success
    ? { block: { ...nothing, ...frame.data, ...read }, troubles }
    : {
        block: { ...nothing, ...read },
        troubles: [...shapeTroubles(frame.error, text, []), ...troubles],
      };
}

/** Exits that no page takes, and answers that take one the block does not declare. */
function checkExits({ id, exits, nodes, text }: Block): Found[] {
  const taken = new Set(answersOf(nodes.values()).map(exitOf));
  const unknown = [...nodes.values()].flatMap(({ name, answers }) =>
    [...answers].flatMap(([answer, given]): Found[] => {
      const exit = exitOf(given);
      if (exit === undefined || exits.includes(exit)) return [];
      const place = text.valueAt(['nodes', name, 'answers', answer, 'to']);
      return [{ code: 'exit-unknown', block: id, exit, known: exits, place }];
    }),
  );
  const unused = exits.flatMap((exit, index): Found[] =>
    taken.has(exit)
      ? []
      : [{ code: 'exit-unused', block: id, exit, place: text.valueAt(['exits', index]) }],
  );
  return [...unknown, ...unused];
}

/**
 * Read the blocks, in the order given. Every problem of every file is returned, at its own place.
 * @param flags all that an answer may raise, in order; left out, they are not checked
 */
export function loadBlocks(
  files: readonly SourceFile[],
  flags?: readonly string[],
): Result<Blocks, readonly GuideProblem[]> {
  const read = files.map(readBlock);
  const list = read.map(({ block }) => block);
  const of = new Map<string, Block>();
  const nodes = new Map(list.flatMap((block) => [...block.nodes]));
  const names = new Set(list.flatMap((block) => [...block.names]));
  const problems = read.flatMap(({ block, troubles }) => {
    const { file, text, rules } = block;
    const repeated = [...block.nodes.keys()].flatMap((page): Found[] => {
      const other = of.get(page);
      of.set(page, other ?? block);
      const place = text.keyAt(['nodes', page]);
      return other ? [{ code: 'page-repeated', node: page, block: other.id, place }] : [];
    });
    // What a broken file lacks would be blamed on its other parts.
    const found =
      troubles.length > 0
        ? troubles
        : [
            ...checkExits(block),
            ...checkNodes({ tracks: [], names, nodes: block.nodes }, text, {
              flags,
              exits: block.exits,
            }),
            ...checkRules(rules, nodes.values(), text),
          ];
    return inOrder([...found, ...repeated], file);
  });
  return problems.length > 0 ? fail(problems) : ok({ list, of, flags });
}

/** Pages by the names that rules call them by, with their answers. */
function applies(rule: FileRule, has: (page: string, answer?: string) => boolean): boolean {
  const { unless: _, ...asked } = { unless: undefined, ...rule };
  const named = 'ends-at' in asked ? [asked.answer] : Object.values(asked);
  return named.every((name) => {
    if (typeof name !== 'string') return true;
    const [page = '', answer] = name.split('.');
    return has(page, answer);
  });
}

/** A guide with the pages it takes, and the places at which their troubles are told: its own. */
export interface Composed {
  readonly guide: AuthoredGuide;
  readonly text: YamlText;
  readonly troubles: readonly Found[];
}

/** The pages of blocks that a guide comes to by name, in the order of the blocks. */
function included(guide: AuthoredGuide, { list, of }: Blocks): ReadonlySet<string> {
  const reached = new Set<string>();
  const reach = (to: FileAnswer['to']): void => {
    for (const name of typeof to === 'string' ? [to] : Object.values(to))
      if (of.has(name) && !guide.names.has(name)) reached.add(name);
  };
  reach(guide.start);
  for (const { to } of answersOf(guide.nodes.values())) reach(to);
  // A Set's iterator also visits what is added while it runs.
  for (const page of reached) {
    const block = of.get(page);
    for (const answer of answersOf([block?.nodes.get(page)].filter((one) => one !== undefined))) {
      const wired = guide.blocks?.[block?.id ?? '']?.[exitOf(answer) ?? ''];
      reach(wired?.to ?? answer.to);
    }
  }
  return new Set(
    list.flatMap(({ nodes }) => [...nodes.keys()].filter((name) => reached.has(name))),
  );
}

/** A guide's file with the pages of blocks in it that its journeys come to. */
export function compose(own: AuthoredGuide, text: YamlText, blocks: Blocks): Composed {
  const { list, of } = blocks;
  const taken = included(own, blocks);
  const troubles: Found[] = [];
  const used = new Set<string>();
  const nodes = new Map<string, AuthoredNode>();
  for (const name of taken) {
    const block = of.get(name);
    const node = block?.nodes.get(name);
    if (!block || !node) continue;
    const answers = [...node.answers].flatMap(([answer, given]): [string, FileAnswer][] => {
      const exit = exitOf(given);
      if (exit === undefined) return [[answer, given]];
      const wired = own.blocks?.[block.id]?.[exit];
      used.add(`${block.id} ${exit}`);
      if (wired) return [[answer, { ...given, ...wired }]];
      if (!own.blocks) return [];
      const place = text.keyAt(['blocks', block.id]);
      troubles.push({ code: 'exit-unwired', block: block.id, exit, node: name, answer, place });
      return [];
    });
    nodes.set(name, { ...node, block: block.id, answers: new Map(answers) });
  }
  for (const name of own.names) {
    const block = of.get(name);
    const place = text.keyAt(['nodes', name]);
    if (block) troubles.push({ code: 'page-of-block', node: name, block: block.id, place });
  }
  for (const [id, wiring] of Object.entries(own.blocks ?? {})) {
    const block = list.find((one) => one.id === id);
    const known = list.map((one) => one.id);
    if (!block) {
      troubles.push({ code: 'block-unknown', block: id, known, place: text.keyAt(['blocks', id]) });
      continue;
    }
    for (const exit of Object.keys(wiring)) {
      const place = text.keyAt(['blocks', id, exit]);
      if (!block.exits.includes(exit))
        troubles.push({ code: 'exit-unknown', block: id, exit, known: block.exits, place });
      else if (!used.has(`${id} ${exit}`))
        troubles.push({ code: 'exit-unused', block: id, exit, place });
    }
  }

  const first = own.nodes.get(own.start) ?? nodes.get(own.start);
  const all = new Map([...(first ? [[own.start, first] as const] : []), ...own.nodes, ...nodes]);
  const has = (page: string, answer?: string): boolean =>
    [...all.values()].some(
      ({ name, node, answers }) =>
        (node.text ?? name) === page && (answer === undefined || answers.has(answer)),
    );
  const rules = list.flatMap((block) =>
    block.rules.filter((rule) => applies(rule, has)).map((rule) => ({ rule, block: block.id })),
  );
  const here = (path: Path): Path => {
    const [top, name, , answer = '', ...more] = path;
    const page = String(name);
    const block = top === 'nodes' && !own.names.has(page) ? of.get(page) : undefined;
    if (!block) return path;
    const given = block.nodes.get(page)?.answers.get(String(answer));
    const exit = given && exitOf(given);
    return ['blocks', block.id, ...(exit === undefined ? [] : [exit, ...more])];
  };
  return {
    guide: {
      ...own,
      nodes: all,
      names: new Set([...own.names, ...taken]),
      rules: [...own.rules, ...rules.map(({ rule }) => rule)],
    },
    text: {
      ...text,
      keyAt: (path) => text.keyAt(here(path)),
      valueAt: (path) => text.valueAt(here(path)),
    },
    troubles,
  };
}

/** Where a block's file has a page that no guide takes, or a rule that holds none of them to anything. */
export function unusedOfBlocks({ list }: Blocks, guides: readonly Guide[]): GuideProblem[] {
  const nodes = guides.map((guide) => [...guide.nodes.values()]);
  return list.flatMap(({ id, file, nodes: own, rules, text }) => {
    const pages = [...own.keys()].flatMap((page): Found[] =>
      nodes.some((all) => all.some((node) => node.block === id && node.page === page))
        ? []
        : [{ code: 'node-unreachable', node: page, place: text.keyAt(['nodes', page]) }],
    );
    const idle = rules.flatMap((rule, index): Found[] =>
      nodes.some((all) =>
        applies(rule, (page, answer) =>
          all.some(
            ({ sentences, answers }) =>
              sentences === page &&
              (answer === undefined || answers.some((one) => one.id === answer)),
          ),
        ),
      )
        ? []
        : [{ code: 'rule-unused', block: id, place: text.valueAt(['rules', index]) }],
    );
    return inOrder([...pages, ...idle], file);
  });
}
