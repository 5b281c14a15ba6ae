/**
 * Every id of content that a page shows has a sentence, and every sentence under such ids is one
 * that a page shows. English is looked at: the other languages are held to its keys.
 */
import type { Model } from '../diagnosis/types.ts';
import { isRecord } from '../guide/shape.ts';
import { groups } from '../visit/staff-view.ts';
import type { Content } from './content.ts';
import { fileProblem, valueAt } from './problem.ts';
import type { Problem } from './problem.ts';
import { TOP } from './read.ts';
import type { Text } from './read.ts';
import { MODEL, SOURCE } from './texts.ts';

/** A sentence, or a list of them, that pages ask for by an id. */
interface Wanted {
  /** The text file's name. */
  readonly file: string;
  readonly path: readonly string[];
  readonly list?: true;
  /** What declares the id: a file of content and the place in it. */
  readonly by: readonly [file: string, ...path: readonly PropertyKey[]];
}

/** What all sentences of a part must be asked for by some id: `file`, then the part's path. */
type Closed = readonly [file: string, ...path: readonly string[]];

function ofModel(model: Model): Wanted[] {
  const file = MODEL;
  const faults = model.faults.flatMap(({ id }) =>
    ['name', 'why'].map((part): Wanted => ({
      file,
      path: ['faults', id, part],
      by: ['model/faults.yaml', 'faults', id],
    })),
  );
  const checks = model.checks.flatMap(({ id, results, ...check }): Wanted[] => {
    const by = ['model/checks.yaml', 'checks', id] as const;
    const shared = (['tools', 'skills', 'cautions'] as const).flatMap((kind) =>
      check[kind].map((one): Wanted => ({ file: 'diagnosis', path: [kind, one], by })),
    );
    return [
      { file, path: ['checks', id, 'name'], by },
      { file, path: ['checks', id, 'how'], list: true, by },
      ...results.map((result): Wanted => ({
        file,
        path: ['checks', id, 'results', result.id],
        by,
      })),
      ...shared,
    ];
  });
  const parts = model.parts.map(({ id }): Wanted => ({
    file: 'diagnosis',
    path: ['parts', id],
    by: ['model/parts.yaml', 'parts', id],
  }));
  const access = model.access.flatMap(({ id, cautions = [] }) =>
    [['access', id] as const, ...cautions.map((one) => ['cautions', one] as const)].map(
      (path): Wanted => ({ file: 'diagnosis', path, by: ['model/parts.yaml', 'access', id] }),
    ),
  );
  const places = model.faults.flatMap(({ id, place }): Wanted[] =>
    place === undefined
      ? []
      : [{ file: 'diagnosis', path: ['places', place], by: ['model/faults.yaml', 'faults', id] }],
  );
  return [...faults, ...places, ...checks, ...parts, ...access];
}

/** Each part of content that could be read gives what it asks for. */
function wanted(content: Content): { readonly all: Wanted[]; readonly closed: Closed[] } {
  const all: Wanted[] = [];
  const closed: Closed[] = [];
  const want = (file: string, path: readonly string[], ...by: Wanted['by']): void => {
    all.push({ file, path, by });
  };
  const details = content.details();
  if (details.ok) {
    for (const { id, answers } of details.value) {
      want('note', ['details', id, 'label'], 'details.yaml', id);
      want('preview', ['details', id, 'name'], 'details.yaml', id);
      for (const file of ['note', 'preview'])
        for (const answer of answers)
          want(file, ['details', id, 'answers', answer], 'details.yaml', id);
    }
    closed.push(['note', 'details'], ['preview', 'details']);
  }
  const model = content.model();
  if (model.ok) {
    all.push(...ofModel(model.value));
    closed.push([MODEL]);
    for (const kind of ['access', 'tools', 'skills', 'cautions', 'parts', 'places'])
      closed.push(['diagnosis', kind]);
  }
  const guides = content.guides();
  if (guides.ok)
    for (const { id } of guides.value)
      want('guides', ['names', id], `guides/${id}/graph.yaml`, 'id');
  const finder = content.finder();
  if (finder.ok) {
    finder.value.groups.forEach(({ id, sayings }, index) => {
      want('guides', ['groups', id], 'finder.yaml', 'groups', index);
      sayings.forEach((saying, place) => {
        const at = ['groups', index, 'sayings', place] as const;
        want('guides', ['sayings', saying.id], 'finder.yaml', ...at);
        // A guide the finder already names may have its name before it is there.
        want('guides', ['names', saying.guide], 'finder.yaml', ...at);
      });
    });
    closed.push(['guides', 'groups'], ['guides', 'sayings'], ['guides', 'names']);
  }
  const demos = content.demos();
  if (demos.ok) {
    demos.value.forEach(({ id }, index) => {
      want('preview', ['demo', 'list', id], 'demo.json', index);
    });
    closed.push(['preview', 'demo', 'list']);
  }
  if (guides.ok)
    (guides.value[0]?.flags ?? []).forEach((flag, index) => {
      want('preview', ['flags', flag], 'flags.yaml', index);
    });
  for (const group of groups) want('preview', ['groups', group], '../src/visit/staff-view.ts');
  return { all, closed };
}

function isSaid(value: unknown, list: boolean): boolean {
  if (list)
    return Array.isArray(value) && value.length > 0 && value.every((one) => isSaid(one, false));
  return typeof value === 'string' && value.trim() !== '';
}

/** The paths of all sentences and lists of a value. */
function leaves(value: unknown, path: readonly string[]): (readonly string[])[] {
  return isRecord(value)
    ? Object.entries(value).flatMap(([key, inner]) => leaves(inner, [...path, key]))
    : [path];
}

/** Ids without a sentence, and sentences without an id. */
export function idSentences(content: Content): readonly Problem[] {
  const text = (file: string): Text | undefined => {
    const read = content.text(`text/${SOURCE}/${file}.json`);
    return read.ok ? read.value : undefined;
  };
  const declared = ([file, ...path]: Wanted['by']): string => {
    const read = file.startsWith('..') ? undefined : content.text(file);
    const { line } = read?.ok ? read.value.keyAt(path) : TOP;
    return `${content.shown(file)}:${String(line)}`;
  };
  const { all, closed } = wanted(content);
  const asked = new Set(all.map(({ file, path }) => [file, ...path].join(' ')));
  const missing = all.flatMap(({ file, path, list = false, by }): Problem[] => {
    const own = text(file);
    if (!own || isSaid(valueAt(own.value, path), list)) return [];
    const trouble = { code: 'sentence-missing', key: `${file}:${path.join('.')}` } as const;
    return [fileProblem(own, own.keyAt(path), { ...trouble, by: declared(by) })];
  });
  const unused = closed.flatMap(([file, ...path]): Problem[] => {
    const own = text(file);
    const left = own ? leaves(valueAt(own.value, path) ?? {}, path) : [];
    return left
      .filter((leaf) => !asked.has([file, ...leaf].join(' ')))
      .flatMap((leaf) => {
        const key = `${file}:${leaf.join('.')}`;
        return own ? [fileProblem(own, own.keyAt(leaf), { code: 'sentence-unused', key })] : [];
      });
  });
  const once = new Map(missing.map((problem) => [JSON.stringify(problem.trouble), problem]));
  return [...once.values(), ...unused];
}
