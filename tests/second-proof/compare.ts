/** What both provers say of the published guides, and of copies of them with a slip. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { content } from '../../src/content/load.ts';
import { joinGuides } from '../../src/guide/join.ts';
import type { GuideSource } from '../../src/guide/join.ts';
import { loadPart } from '../../src/guide/load.ts';
import type { Guide } from '../../src/guide/types.ts';
import { prove } from '../../src/proof/prove.ts';
import { mutantsOf } from '../mutants/mutants.ts';
import { check } from './check.ts';
import { machineOf, readFiles } from './machine.ts';
import type { Files } from './machine.ts';

const read = (path: string): string => readFileSync(join(content().root, path), 'utf8');
const namesIn = (folder: string): string[] => readdirSync(join(content().root, folder));
const blocks = namesIn('blocks').map((file): [string, string] => [
  file.replace('.yaml', ''),
  read(`blocks/${file}`),
]);
/** Each guide's graph as its file has it. */
export const sources = new Map(
  namesIn('guides').map((id) => [id, read(`guides/${id}/graph.yaml`)]),
);
export const filesOf = (texts: ReadonlyMap<string, string>): Files =>
  readFiles(texts.values(), blocks);

/** What a prover says without a sentence: properties that fail, pages and journeys. */
export interface Said {
  readonly broken: readonly string[];
  readonly pages: number;
  readonly journeys: {
    readonly all: bigint;
    readonly complete: bigint;
    readonly longest: number | null;
  } | null;
}

export function first(guide: Guide): Said {
  const { verdicts, journeys } = prove(guide);
  const { all, complete, longest } = journeys;
  const broken = verdicts.filter(({ holds }) => !holds).map(({ id }) => id);
  const endless = all === null || complete === null ? null : { all, complete, longest };
  return { broken: broken.toSorted(), pages: guide.nodes.size, journeys: endless };
}

export function second(files: Files, id: string, off: readonly string[] = []): Said {
  const machine = machineOf(files, id, off);
  const { broken, journeys } = check(machine);
  return { broken: [...broken].toSorted(), pages: machine.places.length, journeys };
}

/** A guide with a slip, as each prover sees it. */
export interface Compared {
  readonly name: string;
  readonly first: Said;
  readonly second: Said;
}

/** Both on guides with a slip, evenly drawn from all: at most `most` a guide, those that load. */
export function* withSlips(most: number): Generator<Compared> {
  const known = content().blocks();
  if (!known.ok) throw new Error('The blocks do not load.');
  const partOf = (source: string): GuideSource[] => {
    const part = loadPart(source, 'graph.yaml', known.value);
    return part.ok ? [part.value] : [];
  };
  const parts = [...sources.values()].flatMap(partOf);
  const files = filesOf(sources);
  for (const [id, source] of sources) {
    const all = mutantsOf(source);
    const others = parts.filter(({ guide }) => String(guide.id) !== id);
    for (let nth = 0; nth < most; nth += 1) {
      const mutant = all[Math.floor((nth * all.length) / most)];
      const text = mutant?.source() ?? '';
      const loaded = joinGuides([...partOf(text), ...others]);
      const guide = loaded.ok ? loaded.value.find((one) => String(one.id) === id) : undefined;
      // What does not even load is nobody's to prove.
      if (!mutant || !guide) continue;
      const slipped = new Map([...files.guides, ...readFiles([text], []).guides]);
      yield {
        name: mutant.name,
        first: first(guide),
        second: second({ ...files, guides: slipped }, id),
      };
    }
  }
}
