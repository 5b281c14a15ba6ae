/** Names that one file of content uses and another declares. */
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { unusedOfBlocks } from '../guide/blocks.ts';
import type { Blocks } from '../guide/blocks.ts';
import type { Detail } from '../guide/details.ts';
import { isRecord } from '../guide/shape.ts';
import { actions } from '../guide/types.ts';
import type { Guide } from '../guide/types.ts';
import type { Path } from '../guide/yaml.ts';
import { differs } from '../note/freeze.ts';
import { makeCodebooks } from '../note/codebook.ts';
import type { Release } from '../note/release.ts';
import { isWhole } from '../note/retired.ts';
import type { Retired } from '../note/retired.ts';
import { once } from '../once.ts';
import { poorColors } from './colors.ts';
import { all, guideProblem } from './content.ts';
import type { Content, Checked } from './content.ts';
import { demoCode } from './demo-code.ts';
import { fileProblem, nameUnknown, shapeProblems, valueAt } from './problem.ts';
import type { Problem } from './problem.ts';
import { TOP } from './read.ts';
import type { Text } from './read.ts';
import { PRACTICE, careParts, careTextSchema } from './schema/care.ts';
import type { CarePage } from './schema/care.ts';
import type { Demo } from './schema/demo.ts';
import { switchedOff } from './schema/firm.ts';
import type { Finder } from './schema/finder.ts';
import type { Firm } from './schema/firm.ts';
import type { Language } from './schema/languages.ts';
import { recallTroubles } from './recall.ts';
import type { RecallFile } from './schema/recall.ts';
import type { Review } from './schema/reviews.ts';
import { SOURCE } from './texts.ts';

/** What parts say together; nothing where one of them is broken, which is told already. */
function together<T extends readonly unknown[]>(
  check: (...values: T) => readonly Problem[],
  ...parts: { readonly [K in keyof T]: Checked<T[K]> }
): readonly Problem[] {
  const values = all<T>(...parts);
  return values.ok ? check(...values.value) : [];
}

/** The firm's languages are known, the first has pages for staff, and what it says is said in each. */
function firmNames(
  content: Content,
  text: Text,
  firm: Firm,
  known: Readonly<Record<string, Language>>,
): readonly Problem[] {
  const { languages, area, colors } = firm;
  const [first = ''] = languages;
  const staff = known[first]?.staff ?? true;
  const unknown = languages.flatMap((name, index) =>
    known[name] ? [] : [nameUnknown(text, ['languages', index], name, 'languages.yaml')],
  );
  const told = { area, 'after-hours': firm['after-hours'], 'call-out': firm['call-out'] ?? '' };
  const silent = Object.entries(told).flatMap(([key, told]) =>
    typeof told === 'string'
      ? []
      : languages
          .filter((language) => told[language] === undefined)
          .map((language) => [key, language] as const),
  );
  return [
    ...unknown,
    ...(staff
      ? []
      : [
          fileProblem(text, text.valueAt(['languages', 0]), {
            code: 'staff-language-first',
            language: first,
          }),
        ]),
    ...silent.map(([path, key]) =>
      fileProblem(text, text.keyAt([path]), { code: 'key-missing', path, key }),
    ),
    ...(colors ? poorColors(colors) : []).map((poor) =>
      fileProblem(text, text.valueAt(['colors', poor.theme]), poor),
    ),
    ...logoProblems(content, text, firm),
  ];
}

/** A logo is fetched with every page, the first question among them. */
const LOGO_BYTES = 4000;

function logoProblems(content: Content, text: Text, { logo }: Firm): readonly Problem[] {
  if (logo === undefined) return [];
  const file = statSync(join(content.root, logo), { throwIfNoEntry: false });
  if (file !== undefined && file.size <= LOGO_BYTES) return [];
  if (!file) return [nameUnknown(text, ['logo'], logo, 'the folder content')];
  const trouble = { code: 'logo-heavy', bytes: file.size, most: LOGO_BYTES } as const;
  return [fileProblem(text, text.valueAt(['logo']), trouble)];
}

/** Care pages are led to from pages that are there. */
function careNames(
  text: Text,
  pages: readonly CarePage[],
  guides: readonly Guide[],
): readonly Problem[] {
  const places = new Set(
    guides.flatMap(({ id, nodes }) =>
      [...nodes.values()].flatMap((node) => [`${id}/${node.sentences}`, `*/${node.sentences}`]),
    ),
  );
  return pages.flatMap(({ from }, page) =>
    from.flatMap((name, index) =>
      places.has(name) ? [] : [nameUnknown(text, [page, 'from', index], name, 'the guides’ pages')],
    ),
  );
}

/** Every care page has its English sentences, no others are there, and each names a known source. */
function careTexts(
  text: Text,
  pages: readonly CarePage[],
  sources: Readonly<Record<string, string>>,
): readonly Problem[] {
  const shape = z.looseObject({
    topics: z.strictObject(Object.fromEntries(pages.map(({ id }) => [id, careTextSchema]))),
  });
  const parsed = shape.safeParse(text.value);
  if (!parsed.success) return shapeProblems(text, parsed.error.issues);
  return Object.entries(parsed.data.topics).flatMap(([topic, own]) =>
    careParts.flatMap((part) =>
      own[part].flatMap(({ from }, index) =>
        from === PRACTICE || Object.hasOwn(sources, from)
          ? []
          : [nameUnknown(text, ['topics', topic, part, index, 'from'], from, 'sources.json')],
      ),
    ),
  );
}

/** The newest release can write the code of every made-up visit. */
function demoNames(
  text: Text,
  demos: readonly Demo[],
  releases: readonly Release[],
): readonly Problem[] {
  const codebooks = makeCodebooks(releases);
  return demos.flatMap((demo, index) => {
    const code = demoCode(demo, codebooks);
    if (code.ok) return [];
    const reason = JSON.stringify(code.error);
    return [fileProblem(text, text.valueAt([index]), { code: 'demo-broken', id: demo.id, reason })];
  });
}

/** Every guide that someone signs for is there. */
function reviewNames(
  text: Text,
  reviews: readonly Review[],
  guides: readonly Guide[],
): readonly Problem[] {
  const known = new Set<string>(guides.map(({ id }) => id));
  return reviews.flatMap(({ guide: name }, index) =>
    known.has(name) ? [] : [nameUnknown(text, [index, 'guide'], name, 'guides')],
  );
}

/** What each drawing shows (`shows.yaml`): the build draws from its own folder, whatever the copy. */
const shownSchema = z.record(
  z.string(),
  z.strictObject({ shows: z.string().min(1), does: z.array(z.enum(actions)).optional() }),
);
export const drawingsShown = once(() =>
  shownSchema.parse(
    parse(readFileSync(new URL('../site/drawings/shows.yaml', import.meta.url), 'utf8')),
  ),
);

/**
 * Every drawing that a page names is there, and none shows a deed that its page does not ask for:
 * on a stop or a finish no deed at all, on a step its own action.
 */
function drawings(content: Content, blocks: Blocks, guides: readonly Guide[]): readonly Problem[] {
  const known = drawingsShown();
  const ofAnswers = new Set(readdirSync(new URL('../site/drawings/answers/', import.meta.url)));
  const graphs = guides.map(({ id }) => `guides/${id}/graph.yaml`);
  const files = [
    ...[...blocks.list.map(({ id }) => `blocks/${id}.yaml`), ...graphs].map(
      (name) => [name, ['nodes']] as const,
    ),
    ['care.yaml', []] as const,
  ];
  return files.flatMap(([file, path]) => {
    const text = content.text(file);
    if (!text.ok) return [];
    const pages = valueAt(text.value.value, path);
    const keys = Array.isArray(pages)
      ? [...pages.keys()]
      : isRecord(pages)
        ? Object.keys(pages)
        : [];
    const value = (at: Path): unknown => valueAt(text.value.value, at);
    const unknown = (at: Path, name: string, folder: string) =>
      nameUnknown(text.value, at, `${name}.svg`, folder);
    return keys.flatMap((key): readonly Problem[] => {
      const page: Path = [...path, key];
      const answers = value([...page, 'answers']);
      const small = (isRecord(answers) ? Object.keys(answers) : []).flatMap((answer) => {
        const at = [...page, 'answers', answer, 'drawing'];
        const name = value(at);
        return typeof name !== 'string' || ofAnswers.has(`${name}.svg`)
          ? []
          : [unknown(at, name, 'src/site/drawings/answers')];
      });
      const at = [...page, 'drawing'];
      const name = value(at);
      if (typeof name !== 'string') return small;
      const shown = known[name];
      if (!shown) return [unknown(at, name, 'src/site/drawings'), ...small];
      const action = value([...page, 'action']);
      const asked =
        value([...page, 'kind']) === 'question' || shown.does?.some((one) => one === action);
      return shown.does === undefined || asked
        ? small
        : [
            fileProblem(text.value, text.value.valueAt(at), { code: 'drawing-does', name }),
            ...small,
          ];
    });
  });
}

/** Every flag is raised somewhere: one that is not would be looked for in vain. */
function flagNames(text: Text, guides: readonly Guide[]): readonly Problem[] {
  const raised = new Set(
    guides.flatMap(({ nodes }) =>
      [...nodes.values()].flatMap(({ flag, answers }) => [flag, ...answers.map((one) => one.flag)]),
    ),
  );
  return (guides[0]?.flags ?? []).flatMap((flag, index) =>
    raised.has(flag)
      ? []
      : [fileProblem(text, text.valueAt([index]), { code: 'flag-unused', flag })],
  );
}

/** What a saying answers is an answer to the question behind the danger page of its guide. */
function sayingNames(text: Text, finder: Finder, guides: readonly Guide[]): readonly Problem[] {
  return finder.groups.flatMap(({ sayings }, group) =>
    sayings.flatMap(({ guide: name, answer }, index) => {
      const guide = guides.find(({ id }) => id === name);
      if (!guide || answer === undefined) return [];
      const next = guide.nodes.get(guide.start)?.answers.map(({ to }) => guide.nodes.get(to));
      const known = (next ?? []).flatMap((node) =>
        (node?.answers ?? []).map(({ id }) => `${node?.id ?? ''}.${id}`),
      );
      if (known.includes(answer)) return [];
      const at = ['groups', group, 'sayings', index, 'answer'];
      return [nameUnknown(text, at, answer, `the first answers of ${name}`)];
    }),
  );
}

/** Every flag that a code may raise is still one that staff are shown. */
function releaseFlags(
  content: Content,
  releases: readonly Release[],
  flags: readonly string[],
): readonly Problem[] {
  const known = new Set(flags);
  // Of old releases `retired.json` tells.
  const files = ['retired.json', ...releases.map(({ release }) => `releases/${release}.json`)];
  return files.flatMap((file) => {
    const text = content.text(file);
    if (!text.ok) return [];
    return flagsIn(text.value.value).flatMap(([path, name]) =>
      known.has(name) ? [] : [nameUnknown(text.value, path, name, 'flags.yaml')],
    );
  });
}

/** Each flag in a value of JSON, with the way to it. */
function flagsIn(value: unknown, path: Path = []): readonly (readonly [Path, string])[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]: [string, unknown]) => {
    const at = [...path, Array.isArray(value) ? Number(key) : key];
    return key === 'flag' && typeof inner === 'string'
      ? [[at, inner] as const]
      : flagsIn(inner, at);
  });
}

/** What is kept of old guides is of pages and answers of old releases, and of all their guides. */
function retiredNames(
  content: Content,
  retired: Retired,
  releases: readonly Release[],
): readonly Problem[] {
  const file = { file: content.shown('retired.json') };
  const text = content.text('retired.json');
  const old = releases.filter(({ release }) => {
    const frozen = content.text(`releases/${release}.json`);
    return frozen.ok && !isWhole(frozen.value.value as Release);
  });
  const guides = old.flatMap((release) => release.guides);
  const known = new Set(
    guides.flatMap(({ id, nodes }) =>
      nodes.flatMap(({ id: node, page = node, answers = [] }) => [
        ...[id, `${id}.${page}`],
        ...answers.map(([answer]) => `${id}.${page}.${answer}`),
      ]),
    ),
  );
  const kept = Object.entries(retired).flatMap(([guide, { pages }]): Path[] => [
    [guide],
    ...Object.entries(pages).flatMap(([page, { answers = {} }]): Path[] => [
      [guide, 'pages', page],
      ...Object.keys(answers).map((answer) => [guide, 'pages', page, 'answers', answer]),
    ]),
  ]);
  const nameOf = (path: Path): string => path.filter((_, index) => index % 2 === 0).join('.');
  const missing = new Set(guides.map(({ id }) => id).filter((id) => !Object.hasOwn(retired, id)));
  return [
    ...kept.flatMap((path) =>
      known.has(nameOf(path))
        ? []
        : [
            fileProblem(file, text.ok ? text.value.keyAt(path) : TOP, {
              ...{ code: 'name-unknown', name: nameOf(path), among: 'the old releases' },
            }),
          ],
    ),
    ...[...missing].map((key) => fileProblem(file, TOP, { code: 'key-missing', path: '', key })),
  ];
}

/** A copy with a switch off writes codes of a release of its own. */
function switchedReleases(
  text: Text,
  firm: Firm,
  guides: readonly Guide[],
  whole: readonly Guide[],
  details: readonly Detail[],
  releases: readonly Release[],
): readonly Problem[] {
  const newest = releases.at(-1);
  const off = switchedOff(firm).filter((name) =>
    whole.some((guide) => guide.switches?.includes(name)),
  );
  if (!newest || off.length === 0 || differs(guides, details, newest).length === 0) return [];
  return off.map((name) =>
    fileProblem(text, text.keyAt([name]), {
      ...{ code: 'release-of-others', release: newest.release, switch: name },
    }),
  );
}

/** A recall stops only what something can replace. */
function recallNames(
  text: Text,
  recall: RecallFile,
  guides: readonly Guide[],
  releases: readonly Release[],
): readonly Problem[] {
  return recallTroubles(recall, guides, releases).map((trouble) =>
    fileProblem(
      text,
      text.valueAt(trouble.code === 'recall-above' ? ['least'] : ['pages', trouble.at]),
      trouble,
    ),
  );
}

/** Every name in the small files that nothing declares. */
export function names(content: Content): readonly Problem[] {
  const { blocks, carePages, demos, details, firm, flags, guides, languages, releases } = content;
  const { finder, recall, retired, reviews, sources, text, wholeGuides } = content;
  return [
    ...together((...known) => drawings(content, ...known), blocks(), wholeGuides()),
    ...together((...known) => unusedOfBlocks(...known).map(guideProblem), blocks(), wholeGuides()),
    ...together(flagNames, text('flags.yaml'), wholeGuides()),
    ...together((...known) => releaseFlags(content, ...known), releases(), flags()),
    ...together((...known) => retiredNames(content, ...known), retired(), releases()),
    ...together(
      switchedReleases,
      text('firm.yaml'),
      firm(),
      guides(),
      wholeGuides(),
      details(),
      releases(),
    ),
    ...together(sayingNames, text('finder.yaml'), finder(), guides()),
    ...together((...known) => firmNames(content, ...known), text('firm.yaml'), firm(), languages()),
    ...together(careNames, text('care.yaml'), carePages(), guides()),
    ...together(careTexts, text(`text/${SOURCE}/care.json`), carePages(), sources()),
    ...together(reviewNames, text('reviews.yaml'), reviews(), guides()),
    ...together(recallNames, text('recall.json'), recall(), wholeGuides(), releases()),
    ...together(demoNames, text('demo.json'), demos(), releases()),
  ];
}
