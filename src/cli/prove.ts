/**
 * Prove every guide over every journey. Exit status 0 when all hold, 1 when a property
 * fails (its counter-example is told), 2 when a file cannot be used.
 */
import { relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type { GuideProblem } from '../guide/problem.ts';
import { prove } from '../proof/prove.ts';
import { guideFiles, inRoot } from './books.ts';
import { readGuide, readSentences } from './guide-files.ts';
import type { TextProblem } from './guide-files.ts';
import { tellProblem } from './guide-words.ts';
import { languageHolds } from '../text/check-language.ts';
import { languageLines } from '../text/language-words.ts';
import { languages } from '../content/languages.ts';
import { SOURCE, languageReport } from '../content/whole-language.ts';
import { proofJson, proofLines, spokenGrade } from './proof-report.ts';
import type { Proved } from './proof-report.ts';

const USAGE = `Use:
  npm run prove                     every guide, for people
  npm run -s prove -- --json        the same for machines
  npm run prove -- --language XX    only how whole and how easy to read a language is
  npm run prove -- GRAPH.YAML…      only these files`;

type Problem = GuideProblem | TextProblem;

function tell(problem: Problem): string {
  switch (problem.code) {
    case 'file-unreadable':
      return `${problem.file}: There is no such file to read.\n    Write it, or correct the name.`;
    case 'not-json':
      return `${problem.file}: This is not JSON (${problem.reason}).\n    Check commas, quotes and brackets at this place.`;
    case 'text-shape':
      return `${problem.file}: ${problem.path} has the wrong form.\n    Compare with the same key of another page.`;
    default:
      return tellProblem(problem);
  }
}

function proveFile(path: string, problems: Problem[]): Proved | undefined {
  const file = relative(inRoot(''), path);
  const guide = readGuide(path, file);
  if (!guide.ok) {
    problems.push(...guide.error);
    return undefined;
  }
  const sentences = readSentences(guide.value);
  if (!sentences.ok) {
    problems.push(...sentences.error);
    return undefined;
  }
  const text = { sentences: sentences.value, grade: spokenGrade };
  return {
    file,
    guide: guide.value,
    sentences: sentences.value,
    proof: prove(guide.value, text),
  };
}

/** The languages that are compared with the one sentences are written in. */
function otherLanguages(): readonly string[] {
  return languages().filter((language) => language !== SOURCE);
}

function tellLanguages(asked: readonly string[]): number {
  const reports = asked.map(languageReport);
  for (const report of reports) console.log(languageLines(report).join('\n'));
  return reports.every(languageHolds) ? 0 : 1;
}

function main(): number {
  let options;
  try {
    options = parseArgs({
      options: {
        json: { type: 'boolean' },
        language: { type: 'string' },
      },
      allowPositionals: true,
    });
  } catch {
    console.error(USAGE);
    return 2;
  }
  const { values, positionals } = options;
  if (values.language !== undefined) return tellLanguages([values.language]);
  const files =
    positionals.length > 0 ? positionals.map((path) => resolve(path)) : guideFiles().map(inRoot);
  const problems: Problem[] = [];
  const proved = files.flatMap((file) => proveFile(file, problems) ?? []);
  // Of broken guides no text can be judged; single files are looked at by themselves.
  const whole = problems.length === 0 && positionals.length === 0;
  const reports = whole ? otherLanguages().map(languageReport) : [];
  if (values.json) {
    const guides = proved.map(proofJson);
    console.log(JSON.stringify({ guides, languages: reports, problems }, null, 2));
  } else {
    for (const one of proved) console.log(proofLines(one).join('\n'));
    for (const report of reports) console.log(languageLines(report).join('\n'));
    for (const problem of problems) console.error(tell(problem));
  }
  if (problems.length > 0) return 2;
  const holds = proved.every(({ proof }) => proof.holds) && reports.every(languageHolds);
  return proved.length > 0 && holds ? 0 : 1;
}

process.exitCode = main();
