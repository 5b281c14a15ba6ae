/** Problems of translations in words, for whoever builds the site. */
import { MOST_SENTENCES, MOST_WORDS } from './check-language.ts';
import type { LanguageReport } from './check-language.ts';
import type { TranslationProblem } from './translation.ts';

const either = (words: readonly string[]): string => words.map((word) => `“${word}”`).join(' or ');

/** What is wrong with a translation and what to do. */
export function tellTranslation(problem: TranslationProblem): { what: string; hint: string } {
  const { path } = problem;
  const told = (what: string, hint: string) => ({ what: `${path}: ${what}`, hint });
  switch (problem.code) {
    case 'key-missing':
      return told('is missing: English stands there.', 'Translate the English sentence.');
    case 'safety-missing':
      return told(
        'is missing, and it keeps readers safe: no copy can speak the language without it.',
        'Translate the English sentence.',
      );
    case 'sentence-long':
      return told(
        `has a sentence of ${String(problem.count)} words; ${String(MOST_WORDS)} is the most.`,
        'Make two of it.',
      );
    case 'line-long':
      return told(
        `has ${String(problem.count)} sentences; a numbered line has one action.`,
        `Put it into ${String(MOST_SENTENCES)} or fewer.`,
      );
    case 'key-unknown':
      return told('English has no such key.', 'Take it out, or correct its name.');
    case 'form-missing':
      return told(`the language counts with a form "${problem.form}".`, 'Add this key.');
    case 'kind-differs':
      return told(`should be as in English (${problem.expected}).`, 'Compare the two files.');
    case 'list-length':
      return told(`English has ${String(problem.expected)} items here.`, 'Write as many.');
    case 'text-empty':
      return told('is empty.', 'Translate the English sentence.');
    case 'untranslated':
      return told(
        `looks like English: “${problem.text}”.`,
        'Translate it, or name it under "same" in content/languages.yaml.',
      );
    case 'placeholder-lost':
      return told(`{{${problem.name}}} was lost.`, 'Put it where the fact belongs.');
    case 'placeholder-unknown':
      return told(`English has no {{${problem.name}}} here.`, 'Take it out.');
    case 'term-missing':
      return told(
        `"${problem.term}" is called ${either(problem.use)} in the glossary.`,
        `Use that word. ${problem.why}`,
      );
    case 'term-forbidden':
      return told(
        `the glossary refuses “${problem.found}”.`,
        `Say ${either(problem.use)}. ${problem.why}`,
      );
  }
}

const MOST_PROBLEMS = 40;
const MOST_PAGES = 5;

/** A language's report for people. */
export function languageLines(report: LanguageReport): string[] {
  const { language, sentences, problems, behind, pages, hardest } = report;
  const hard = pages.filter(({ score, least }) => score < least);
  const shown = hard.length > 0 ? hard : pages.slice(0, MOST_PAGES);
  return [
    `Language ${language}: ${String(sentences)} sentences, ${String(problems.length)} problems, ${String(behind.length)} left in English.`,
    ...[...problems, ...behind].slice(0, MOST_PROBLEMS).map((problem) => {
      const { what, hint } = tellTranslation(problem);
      return `  ${what} ${hint}`;
    }),
    ...(problems.length + behind.length > MOST_PROBLEMS
      ? [`  And ${String(problems.length + behind.length - MOST_PROBLEMS)} more.`]
      : []),
    ...(pages.length === 0
      ? ['  How easily it reads is not measured: there is no formula in general use.']
      : [`  ${String(pages.length)} scores of pages. The lowest (the higher the easier):`]),
    ...shown.map(
      ({ page, formula, score, least }) =>
        `  ${score < least ? 'TOO HARD' : '        '} ${score.toFixed(1).padStart(6)}  ${page} (${formula}, ${String(least)} is the least)`,
    ),
    ...(hardest.length > 0 ? ['  The hardest sentences, each by itself:'] : []),
    ...hardest.map(({ sentence, score }) => `  ${score.toFixed(1).padStart(15)}  ${sentence}`),
    '',
  ];
}
