/**
 * What must hold before anything is made of content: one list, run by the build, by `npm run
 * prove` and by the tests. A copy with a problem is not built.
 */
import { readdirSync } from 'node:fs';
import { sep } from 'node:path';
import { exitOf } from '../guide/blocks.ts';
import type { Blocks } from '../guide/blocks.ts';
import { ownNodes, parseId } from '../guide/ids.ts';
import type { SourcePosition } from '../guide/problem.ts';
import type { Guide } from '../guide/types.ts';
import type { Path } from '../guide/yaml.ts';
import type { Fault } from '../proof/property.ts';
import { all } from './content.ts';
import type { Content, Copy } from './content.ts';
import { hazardProblems } from './hazards.ts';
import { idSentences } from './id-sentences.ts';
import { languageReport, readTexts, textsOf } from './language-report.ts';
import { names } from './names.ts';
import { fileProblem, shapeProblems, valueAt } from './problem.ts';
import type { Problem } from './problem.ts';
import { provedGuides, tellJourney } from './proofs.ts';
import { regionProblems } from './regions.ts';
import { TOP } from './read.ts';
import type { Text } from './read.ts';
import { guideTextSchema } from './schema/guide-text.ts';
import { tooLong } from '../text/check-language.ts';
import { refused } from '../text/glossary.ts';
import type { TranslationProblem } from '../text/translation.ts';
import { BLOCKS, MODEL, SOURCE, alone, joinedText, ownerTexts, staffTexts } from './texts.ts';

/** One thing asked of content. */
export interface Gate {
  /** The same for machines in every release. */
  readonly id: 'shape' | 'names' | 'sentences' | 'languages' | 'regions' | 'hazards' | 'proof';
  readonly asks: string;
  /** Parts that are broken are the first gate's business: the others pass over them. */
  readonly check: (content: Content) => readonly Problem[];
}

/** Files with a reader of their own, which knows their places better. */
const READ_APART = /^(?:details|flags|blocks\/.*|model\/.*|guides\/.*graph)\.yaml$/;

/** Every file can be parsed, has each key once and no alias, and every part has its form. */
function shape(content: Content): readonly Problem[] {
  const files = readdirSync(content.root, { recursive: true, encoding: 'utf8' })
    .map((file) => file.split(sep).join('/'))
    .filter((file) => /\.(?:json|yaml)$/.test(file) && !READ_APART.test(file));
  const { blocks, carePages, demos, details, finder, firm, hazards, languages, model } = content;
  const { glossary, ownWords, recall, regions, releases, retired, reviews, staffViews, sources } =
    content;
  const { safety, study, wcag } = content;
  const known = languages();
  const read = [blocks, carePages, demos, details, finder, firm, hazards, model] as const;
  const later = [
    ownWords,
    retired,
    recall,
    regions,
    releases,
    reviews,
    staffViews,
    sources,
  ] as const;
  const told = [safety, study, wcag] as const;
  const parts = [
    ...files.map(content.text),
    ...[...read, ...later, ...told].map((part) => part()),
    known,
    ...(known.ok ? Object.keys(known.value).map(glossary) : []),
  ];
  return [
    ...parts.flatMap((part) => (part.ok ? [] : part.error)),
    ...ofCopies(content, (copy) => (copy.ok ? [] : copy.error)),
  ];
}

/** A guide's English sentences have the shape its graph asks for, those of blocks' pages too. */
function guideSentences(content: Content): readonly Problem[] {
  const parts = all<[Blocks, readonly Guide[], Text]>(
    content.blocks(),
    content.wholeGuides(),
    content.text(`text/${SOURCE}/${BLOCKS}.json`),
  );
  if (!parts.ok) return [];
  const [{ of }, guides, shared] = parts.value;
  const texts = readTexts(content, SOURCE, [BLOCKS, ...guides.map(({ id }) => id)]);
  if (!texts.ok) return [];
  const read = (name: string) => (texts.value.get(name) ?? {}) as Record<string, unknown>;
  const problems = guides.flatMap((guide) => {
    const value = joinedText(alone(guide), read(BLOCKS), read);
    const parsed = guideTextSchema(guide).safeParse(value);
    const own = content.text(`text/${SOURCE}/${guide.id}.json`);
    if (!own.ok) return [];
    const doubled = Object.keys(read(guide.id)).filter((page) => of.has(page));
    return [
      ...doubled.map((page) =>
        fileProblem(own.value, own.value.keyAt([page]), {
          ...{ code: 'sentence-of-block', key: `${guide.id}:${page}` },
        }),
      ),
      ...(parsed.error?.issues ?? []).flatMap((issue) => {
        const file = of.has(String(issue.path[0])) ? shared : own.value;
        return shapeProblems({ ...file, value }, [issue]);
      }),
    ];
  });
  const shown = new Set<string>(
    guides.flatMap((guide) => ownNodes(guide).map(({ sentences }) => sentences)),
  );
  const unused = Object.keys(read(BLOCKS)).filter((page) => !shown.has(page));
  return [
    ...problems,
    ...unused.map((page) =>
      fileProblem(shared, shared.keyAt([page]), {
        ...{ code: 'sentence-unused', key: `${BLOCKS}:${page}` },
      }),
    ),
  ];
}

/** A problem told at the place of a sentence; `path` is `file:key.key`. */
function atSentence(
  content: Content,
  language: string,
  path: string,
  make: (text: Pick<Text, 'file' | 'keyAt'>, path: Path) => Problem,
): Problem {
  const [name = '', keys = ''] = path.split(':');
  const file = `text/${language}/${name}.json`;
  const text = content.text(file);
  // Of a file that is not there all is told at its beginning.
  const places = text.ok ? text.value : { file: content.shown(file), keyAt: () => TOP };
  return make(places, keys.split('.'));
}

function translationProblems(
  content: Content,
  language: string,
  problems: readonly TranslationProblem[],
): readonly Problem[] {
  return problems.map((trouble) =>
    atSentence(content, language, trouble.path, ({ file, keyAt }, path) => ({
      ...{ file, place: keyAt(path), about: 'translation', trouble },
    })),
  );
}

/** Which English sentences say what the English glossary refuses, or are too long for a homeowner. */
function englishSentences(content: Content): readonly Problem[] {
  const [glossary, others, guides] = [
    content.glossary(SOURCE),
    textsOf(content, SOURCE),
    content.guides(),
  ];
  if (!glossary.ok || !others.ok || !guides.ok) return [];
  const names = [...others.value, BLOCKS, ...guides.value.map(({ id }) => id)];
  const texts = readTexts(content, SOURCE, names);
  if (!texts.ok) return [];
  const staff = new Set<string>([...staffTexts, MODEL]);
  const owners = new Set<string>(ownerTexts);
  const problems = [...texts.value].flatMap(([name, value]) => [
    ...refused(value, `${name}:`, glossary.value),
    ...(staff.has(name) ? [] : tooLong(value, `${name}:`, !owners.has(name))),
  ]);
  return translationProblems(content, SOURCE, problems);
}

/** What every other language that the firm speaks lacks beside English, and where it reads hard. */
function otherLanguages(content: Content): readonly Problem[] {
  const firm = content.firm();
  const others = firm.ok ? firm.value.languages.filter((language) => language !== SOURCE) : [];
  return others.flatMap((language) => {
    const report = languageReport(content, language);
    if (!report.ok) return report.error;
    const { problems, pages } = report.value;
    return [
      ...translationProblems(content, language, problems),
      ...pages
        .filter(({ score, least }) => score < least)
        .map((trouble) =>
          atSentence(content, language, trouble.page.replace('/', ':'), (text, path) =>
            fileProblem(text, text.keyAt(path), { code: 'too-hard', ...trouble }),
          ),
        ),
    ];
  });
}

/** Where a fault of a proof stands: the page's sentences, or the node or answer in its graph. */
function faultPlace(
  content: Content,
  guide: Guide,
  fault: Fault,
): { file: string; place: SourcePosition } {
  const { guide: of = guide.id, name } = parseId(fault.node);
  const inFile = (path: string, ...paths: readonly Path[]) => {
    const text = content.text(path);
    if (!text.ok) return { file: content.shown(path), place: TOP };
    const found = paths.find((keys) => valueAt(text.value.value, keys) !== undefined);
    return { file: text.value.file, place: found ? text.value.keyAt(found) : TOP, found };
  };
  const answer = 'answer' in fault ? ['answers', fault.answer] : [];
  const node = guide.nodes.get(fault.node);
  const blocks = content.blocks();
  const block = blocks.ok && node?.block !== undefined ? blocks.value.of.get(node.page) : undefined;
  if (fault.code === 'too-hard') {
    const page = [parseId(node?.sentences ?? name).name];
    const own = inFile(`text/${SOURCE}/${of}.json`, page);
    return own.found ? own : inFile(`text/${SOURCE}/${BLOCKS}.json`, page);
  }
  const page = node?.page ?? name;
  const paths = [
    ['nodes', page, ...answer],
    ['nodes', page],
  ];
  if (!block) return inFile(`guides/${of}/graph.yaml`, ...paths);
  const given = 'answer' in fault && block.nodes.get(page)?.answers.get(fault.answer);
  const exit = given ? exitOf(given) : undefined;
  // Where an exit leads is the guide's own doing.
  return exit === undefined
    ? inFile(`blocks/${block.id}.yaml`, ...paths)
    : inFile(`guides/${of}/graph.yaml`, ['blocks', block.id, exit]);
}

/** What is wrong only where switches are off, marked so: a firm may turn them at any time. */
function ofCopies(
  { copies }: Content,
  problemsOf: (guides: Copy['guides']) => readonly Problem[],
): readonly Problem[] {
  const told = new Set<string>();
  return copies().flatMap(({ off, guides }) =>
    problemsOf(guides).flatMap((problem) => {
      const key = JSON.stringify(problem);
      if (told.has(key)) return [];
      told.add(key);
      return [off.length > 0 ? { ...problem, off } : problem];
    }),
  );
}

/** Every property of every guide, the guides it hands over to joined to it. */
function proofs(content: Content, guides: Copy['guides']): readonly Problem[] {
  const proved = provedGuides(content, guides);
  if (!proved.ok) return [];
  const failing = proved.value.flatMap((one) =>
    one.proof.verdicts.flatMap(({ id: property, faults, counterExample }) =>
      counterExample ? [{ one, property, more: faults.length - 1, ...counterExample }] : [],
    ),
  );
  // What a guide breaks is broken in those that hand over to it, too: told of the guide itself.
  const told = new Set(failing.map(({ one, property }) => `${one.guide.id} ${property}`));
  return failing
    .filter(({ property, fault }) => !told.has(`${parseId(fault.node).guide ?? ''} ${property}`))
    .map(({ one, property, fault, journey, more }) => ({
      ...faultPlace(content, one.guide, fault),
      about: 'proof',
      trouble: { property, fault, guide: one.guide.id, journey: tellJourney(one, journey), more },
    }));
}

/** The list. */
export const gates: readonly Gate[] = [
  {
    id: 'shape',
    asks: 'Every file can be parsed, gives each key once, and has its form.',
    check: shape,
  },
  { id: 'names', asks: 'Every name that a file uses is one that another declares.', check: names },
  {
    id: 'sentences',
    asks: 'Every page, answer, fault, check, part, detail, flag and guide has its English words.',
    check: (content) => [...guideSentences(content), ...idSentences(content)],
  },
  {
    id: 'languages',
    asks: 'Every language keeps to its terms and to short sentences, has all that keeps readers safe, and reads easily.',
    check: (content) => [...englishSentences(content), ...otherLanguages(content)],
  },
  {
    id: 'regions',
    asks: 'Every region has its own numbers, units, names and sources, and nothing of another.',
    check: regionProblems,
  },
  {
    id: 'hazards',
    asks: 'Every hazard has its controls and evidence that are there; all that warns or is proved has its hazard.',
    check: hazardProblems,
  },
  {
    id: 'proof',
    asks: 'Every guide keeps every property on every journey, whatever is switched off.',
    check: (content) => ofCopies(content, (guides) => proofs(content, guides)),
  },
];

/** Every problem of the content, each told once. Empty: it may be built. */
export function checkContent(content: Content): readonly Problem[] {
  const problems = gates.flatMap(({ check }) => check(content));
  // A broken part is the answer to everyone who asks for it, a block's page's to each of its guides.
  return [...new Map(problems.map((one) => [JSON.stringify(one), one])).values()];
}
