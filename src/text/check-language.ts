/** One language of the site as a whole: is it complete, and does it read easily? */
import { pageGrade } from '../proof/sentences.ts';
import type { NodeSentences } from '../proof/sentences.ts';
import { easeOf, measuredBy } from './reading-ease.ts';
import { count, hardest, sentencesOf } from './readability.ts';
import { spoken } from '../placeholders.ts';
import { sentencesIn } from './glossary.ts';
import { compare } from './translation.ts';
import type { Target, TranslationProblem } from './translation.ts';

/** A page that reads less easily than the formula's least score. */
export interface HardPage {
  readonly page: string;
  readonly formula: string;
  readonly score: number;
  readonly least: number;
}

export interface LanguageReport {
  readonly language: string;
  readonly sentences: number;
  readonly problems: readonly TranslationProblem[];
  /** What it lacks and can do without: English stands there. */
  readonly behind: readonly TranslationProblem[];
  /** Every page and formula, the hardest page first. Empty where nothing is measured. */
  readonly pages: readonly HardPage[];
  readonly hardest: readonly { readonly sentence: string; readonly score: number }[];
}

/** What is looked at: text files by name, the guides' among them. */
export interface LanguageFiles {
  readonly all: readonly string[];
  /** Of these, those whose keys are pages of a guide. */
  readonly guides: readonly string[];
  /** Of these, those homeowners read, guides not counted. */
  readonly owners: readonly string[];
  /** Tests whether a language must have a sentence of its own; takes its path, `file:key.key`. */
  readonly isSafety: (path: string) => boolean;
  /** A file's content. */
  readonly read: (language: string, name: string) => unknown;
}

const MOST_HARD_SENTENCES = 10;

/** All sentences of a value, names left out, placeholders read as one word. */
const strings = (value: unknown): string[] =>
  sentencesIn(value).map(([, sentence]) => spoken(sentence));

/** Words a sentence may have, and sentences an item of a numbered list, of which each is one action. */
export const MOST_WORDS = 20;
export const MOST_SENTENCES = 3;
/** A guide's page numbers the items of these. */
const NUMBERED = new Set(['lines', 'now']);

/**
 * Sentences of homeowners' pages that are too long to keep in mind, and numbered items with more in
 * them than one action: that they are no more than three sentences is all a rule can say of it.
 * @param file its name, `file:`
 * @param guide whether its keys are pages of a guide
 */
export function tooLong(value: unknown, file: string, guide: boolean): TranslationProblem[] {
  return sentencesIn(value).flatMap(([keys, sentence]): TranslationProblem[] => {
    const path = file + keys.join('.');
    const said = sentencesOf([spoken(sentence)]);
    const words = Math.max(0, ...said.map((one) => count([one]).words));
    // "Too hot? Lower it." is one.
    const steps = said.filter((one) => !/[?؟]$/.test(one)).length;
    return [
      ...(words > MOST_WORDS ? [{ code: 'sentence-long', path, count: words } as const] : []),
      ...(guide && NUMBERED.has(keys.at(-2) ?? '') && steps > MOST_SENTENCES
        ? [{ code: 'line-long', path, count: steps } as const]
        : []),
    ];
  });
}

/** A node's sentences, placeholders read as one word. */
function spokenNode(value: unknown): NodeSentences {
  return JSON.parse(spoken(JSON.stringify(value))) as NodeSentences;
}

/** Page → how hard its passages are by a measure; care topics and files are a page each. */
function pagesOf(files: LanguageFiles, language: string) {
  type Measure = (passages: readonly string[]) => number;
  const guidePages = files.guides.flatMap((name) =>
    Object.entries((files.read(language, name) ?? {}) as Record<string, unknown>).map(
      ([page, text]) => {
        const node = spokenNode(text);
        return {
          page: `${name}/${page}`,
          hard: (measure: Measure) => pageGrade(node, measure),
          passages: strings(text),
        };
      },
    ),
  );
  const otherPages = files.owners.flatMap((name) => {
    const text = files.read(language, name) as { topics?: Record<string, unknown> } | undefined;
    const parts = text?.topics ?? { '': text };
    return Object.entries(parts).map(([part, inner]) => {
      const passages = strings(inner);
      return {
        page: part === '' ? name : `${name}/${part}`,
        hard: (measure: Measure) => measure(passages),
        passages,
      };
    });
  });
  return [...guidePages, ...otherPages];
}

function reading(
  files: LanguageFiles,
  language: string,
): Pick<LanguageReport, 'pages' | 'hardest'> {
  const measured = measuredBy(language);
  if (!measured) return { pages: [], hardest: [] };
  const pages = pagesOf(files, language);
  const [first] = measured.formulas;
  const scores = measured.formulas.flatMap((ease) =>
    pages.map(({ page, hard }) => ({
      page,
      formula: ease.name,
      score: -hard((passages) => -easeOf(passages, measured, ease)),
      least: ease.least,
    })),
  );
  const worst = hardest(
    pages.flatMap(({ passages }) => passages),
    MOST_HARD_SENTENCES,
    (passages) => -easeOf(passages, measured, first),
  );
  return {
    pages: scores.toSorted((a, b) => a.score - b.score),
    hardest: worst.map(({ sentence, grade }) => ({ sentence, score: -grade })),
  };
}

/** Everything wrong with a language's text files, and how easily homeowners' pages read. */
export function checkLanguage(files: LanguageFiles, target: Target): LanguageReport {
  const { language } = target;
  const compared = files.all.flatMap((name) =>
    compare(files.read('en', name), files.read(language, name) ?? {}, `${name}:`, target),
  );
  const [behind, problems] = [true, false].map((isBehind) =>
    compared.filter(
      ({ code, path }) => (code === 'key-missing' && !files.isSafety(path)) === isBehind,
    ),
  ) as [TranslationProblem[], TranslationProblem[]];
  const long = [...files.owners, ...files.guides].flatMap((name) =>
    tooLong(files.read(language, name), `${name}:`, files.guides.includes(name)),
  );
  const sentences = files.all.flatMap((name) => strings(files.read(language, name))).length;
  const lacking = problems.map((problem) =>
    problem.code === 'key-missing' ? { ...problem, code: 'safety-missing' as const } : problem,
  );
  return {
    ...{ language, sentences, behind, problems: [...lacking, ...long] },
    ...reading(files, language),
  };
}

/** Whether a build may go on with the language. */
export function languageHolds({ problems, pages }: LanguageReport): boolean {
  return problems.length === 0 && pages.every(({ score, least }) => score >= least);
}
