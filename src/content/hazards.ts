/** The hazard log against what it names: controls and evidence are there, and nothing lacks a hazard. */
import { existsSync, readFileSync } from 'node:fs';
import { parseId } from '../guide/ids.ts';
import type { Guide, GuideNode, Rule, Signal } from '../guide/types.ts';
import type { Path } from '../guide/yaml.ts';
import { propertyIds } from '../proof/property.ts';
import { all } from './content.ts';
import type { Content } from './content.ts';
import { fileProblem, valueAt } from './problem.ts';
import type { FileTrouble, Problem } from './problem.ts';
import { TOP } from './read.ts';
import type { Text } from './read.ts';
import { PRACTICE } from './schema/care.ts';
import type { CarePage } from './schema/care.ts';
import type { Hazard } from './schema/hazards.ts';
import { BLOCKS, SOURCE } from './texts.ts';

type Log = Readonly<Record<string, Hazard>>;

/** The source of what nothing published says and a question of ours found. */
const REVIEW = 'review';
const SLIPS = 'tests/mutants/mutants.ts';

const project = new URL('../../', import.meta.url);
const there = (path: string): boolean => existsSync(new URL(path, project));
const found = (path: string, pattern: RegExp): ReadonlySet<string> =>
  new Set(
    there(path)
      ? [...readFileSync(new URL(path, project), 'utf8').matchAll(pattern)].map(
          (one) => one[2] ?? '',
        )
      : [],
  );

/** A file's tests: what a call takes first, before another argument, and the names of a table's rows. */
const TITLE = /(?:\(|\b(?:who|name):)\s*(['"`])((?:(?!\1).)+)\1,/g;
/** The kinds of slips that tests make in guides. */
const SLIP = /^ {4}(')(.+?)':/gm;

const grave: ReadonlySet<Signal | undefined> = new Set<Signal>(['danger', 'warning']);

const pageOf = ({ block, guide, page }: GuideNode): string =>
  `${block === undefined ? guide : BLOCKS}:${page}`;

/** A rule as hazards name it. */
export function ruleName(rule: Rule): string {
  const named = [
    ...('page' in rule ? [rule.page] : []),
    ...('answer' in rule ? [rule.answer] : []),
  ];
  return [rule.kind, ...named.map((id) => parseId(id).name)].join(' ');
}

type Place = readonly [file: string, at: Path];

/** Pages that warn of death or serious injury → the file and key they stand at. */
export function warnings(
  guides: readonly Guide[],
  care: readonly CarePage[],
): ReadonlyMap<string, Place> {
  const ofGuides = guides
    .flatMap(({ nodes }) => [...nodes.values()])
    .filter(({ caution, danger }) => danger !== undefined || grave.has(caution))
    .map((node) => {
      const { block, guide, page } = node;
      const file = block === undefined ? `guides/${guide}/graph.yaml` : `blocks/${block}.yaml`;
      return [pageOf(node), [file, ['nodes', page]]] as const;
    });
  const ofCare = care.flatMap(({ id, care: signal }, index) =>
    grave.has(signal) ? [[`care:${id}`, ['care.yaml', [index]]] as const] : [],
  );
  return new Map<string, Place>([...ofGuides, ...ofCare]);
}

/** One thing that a hazard names: of a test its file and title, `file: title`. */
export interface Link {
  readonly part: 'control' | 'evidence';
  readonly kind:
    'pages' | 'sentences' | 'rules' | 'properties' | 'software' | 'mutants' | 'tests' | 'bench';
  readonly name: string;
}

/** All that a hazard names, in the order of its file. */
export function linksOf({ controls, evidence }: Hazard): readonly Link[] {
  const { 'outside-our-reach': _, ...inside } = controls;
  const { tests = {}, ...shown } = evidence;
  const listed = (
    part: Link['part'],
    lists: Readonly<Record<string, readonly string[] | undefined>>,
  ) =>
    Object.entries(lists).flatMap(([kind, names = []]) =>
      names.map((name): Link => ({ part, kind: kind as Link['kind'], name })),
    );
  const titles = Object.entries(tests).flatMap(([file, all]) =>
    all.map((title) => `${file}: ${title}`),
  );
  return [...listed('control', inside), ...listed('evidence', { ...shown, tests: titles })];
}

/** What the log has, and how many hazards nothing here controls, or not wholly. */
export function hazardCounts(
  log: Log,
): Readonly<Record<'hazards' | 'controls' | 'evidence' | 'outside', number>> {
  const hazards = Object.values(log);
  const links = hazards.flatMap(linksOf);
  return {
    hazards: hazards.length,
    controls: links.filter(({ part }) => part === 'control').length,
    evidence: links.filter(({ part }) => part === 'evidence').length,
    outside: hazards.filter(({ controls }) => controls['outside-our-reach']).length,
  };
}

/** Names in the log that nothing declares, and hazards without a control or evidence. */
function ofLog(
  content: Content,
  text: Text,
  log: Log,
  guides: readonly Guide[],
  care: readonly CarePage[],
  sources: Readonly<Record<string, string>>,
): readonly Problem[] {
  const nodes = guides.flatMap((guide) => [...guide.nodes.values()]);
  const pages = new Set([...nodes.map(pageOf), ...care.map(({ id }) => `care:${id}`)]);
  const rules = new Set(guides.flatMap((guide) => (guide.rules ?? []).map(ruleName)));
  const slips = found(SLIPS, SLIP);
  const inSources = (name: string) =>
    [PRACTICE, REVIEW].includes(name) || Object.hasOwn(sources, name);
  const isProperty = (name: string) => propertyIds.some((id) => id === name);
  const isSentence = (key: string): boolean => {
    const [name = '', path = ''] = key.split(':');
    const file = content.text(`text/${SOURCE}/${name}.json`);
    return file.ok && valueAt(file.value.value, path.split('.')) !== undefined;
  };
  return Object.entries(log).flatMap(([id, { controls, evidence, sources: cited }]) => {
    const { 'outside-our-reach': outside = false, ...inside } = controls;
    const controlled = Object.keys(inside).length > 0;
    const lacks = [
      ...(controlled || outside ? [] : (['controls'] as const)),
      ...(controlled && Object.keys(evidence).length === 0 ? (['evidence'] as const) : []),
    ];
    const unknown = (
      path: Path,
      names: readonly string[] = [],
      among: string,
      has: (name: string) => boolean,
    ): readonly Problem[] =>
      names.flatMap((name, index) => {
        const trouble: FileTrouble = { code: 'name-unknown', name, among };
        return has(name) ? [] : [fileProblem(text, text.valueAt([id, ...path, index]), trouble)];
      });
    const ofControls = (part: keyof typeof inside, among: string, has: (name: string) => boolean) =>
      unknown(['controls', part], inside[part], among, has);
    const { tests = {}, ...shown } = evidence;
    const ofEvidence = (part: keyof typeof shown, among: string, has: (name: string) => boolean) =>
      unknown(['evidence', part], shown[part], among, has);
    return [
      ...lacks.map((part) =>
        fileProblem(text, text.keyAt([id]), { code: 'hazard-open', hazard: id, lacks: part }),
      ),
      ...unknown(['sources'], cited, 'sources.json', inSources),
      ...ofControls('pages', 'the pages of guides or care.yaml', (name) => pages.has(name)),
      ...ofControls('sentences', 'the English sentences', isSentence),
      ...ofControls('rules', 'the rules of guides', (name) => rules.has(name)),
      ...ofControls('properties', 'the properties of the proof', isProperty),
      ...ofControls('software', 'the project', there),
      ...ofEvidence('properties', 'the properties of the proof', isProperty),
      ...ofEvidence('mutants', SLIPS, (name) => slips.has(name)),
      ...ofEvidence('bench', 'tests/bench', (name) => there(`tests/bench/${name}.ts`)),
      ...Object.entries(tests).flatMap(([name, titles]) => {
        const known = found(`tests/${name}`, TITLE);
        return unknown(['evidence', 'tests', name], titles, `tests/${name}`, (one) =>
          known.has(one),
        );
      }),
    ];
  });
}

/** Everything wrong with the hazard log, and everything that it leaves out. */
export function hazardProblems(content: Content): readonly Problem[] {
  const parts = all<
    [Text, Log, readonly Guide[], readonly CarePage[], Readonly<Record<string, string>>]
  >(
    content.text('hazards.yaml'),
    content.hazards(),
    content.wholeGuides(),
    content.carePages(),
    content.sources(),
  );
  if (!parts.ok) return [];
  const [text, log, guides, care] = parts.value;
  const hazards = Object.values(log);
  const answered = new Set(
    hazards
      .filter(({ severity }) => severity === 'death' || severity === 'serious')
      .flatMap(({ controls }) => controls.pages ?? []),
  );
  const proved = new Set(
    hazards.flatMap(({ controls, evidence }) =>
      [controls, evidence].flatMap((one) => one.properties ?? []),
    ),
  );
  return [
    ...ofLog(content, ...parts.value),
    ...[...warnings(guides, care)].flatMap(([name, [file, at]]) => {
      const own = content.text(file);
      return answered.has(name) || !own.ok
        ? []
        : [
            fileProblem(own.value, own.value.keyAt(at), {
              code: 'hazard-none',
              what: 'page',
              name,
            }),
          ];
    }),
    ...propertyIds
      .filter((name) => !proved.has(name))
      .map((name) => fileProblem(text, TOP, { code: 'hazard-none', what: 'property', name })),
  ];
}
