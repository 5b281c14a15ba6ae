/** One language of the site as a whole: is it complete, and does it read easily? */
import { pageGrade } from '../proof/sentences.ts';
import type { NodeSentences } from '../proof/sentences.ts';
import { easeOf, measuredBy } from './reading-ease.ts';
import { hardest } from './readability.ts';
import { spoken } from '../placeholders.ts';
import { NAMING } from './glossary.ts';
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
  /** A file's content. */
  readonly read: (language: string, name: string) => unknown;
}

const MOST_HARD_SENTENCES = 10;

/** All sentences of a value, names left out, placeholders read as one word. */
export function strings(value: unknown, key = ''): string[] {
  if (typeof value === 'string') return NAMING.has(key) ? [] : [spoken(value)];
  if (Array.isArray(value)) return value.flatMap((one) => strings(one));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => strings(inner, name));
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
  const problems = files.all.flatMap((name) =>
    compare(files.read('en', name), files.read(language, name), `${name}:`, target),
  );
  const sentences = files.all.flatMap((name) => strings(files.read(language, name))).length;
  return { language, sentences, problems, ...reading(files, language) };
}

/** Whether a build may go on with the language. */
export function languageHolds({ problems, pages }: LanguageReport): boolean {
  return problems.length === 0 && pages.every(({ score, least }) => score >= least);
}
