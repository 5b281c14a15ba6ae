/**
 * Everything that must hold of content before it is built, and the figures of each guide's proof.
 * Exit status 0 when all holds, 1 when a property fails or a language is not whole (a
 * counter-example is told), 2 when a file cannot be used.
 */
import { existsSync } from 'node:fs';
import { openContent } from '../content/content.ts';
import type { Content } from '../content/content.ts';
import { checkContent } from '../content/gates.ts';
import { hazardCounts } from '../content/hazards.ts';
import { languageReport } from '../content/language-report.ts';
import { content as ownContent } from '../content/load.ts';
import type { Problem } from '../content/problem.ts';
import { provedGuides } from '../content/proofs.ts';
import { tell, tellProblem } from '../content/tell.ts';
import { SOURCE } from '../content/texts.ts';
import { languageHolds } from '../text/check-language.ts';
import { languageLines } from '../text/language-words.ts';
import { options } from './command.ts';
import { proofJson, proofLines } from './proof-report.ts';

const USAGE = `Use:
  npm run prove                     everything that must hold, and each guide's proof, for people
  npm run -s prove -- --json        the same for machines
  npm run prove -- GUIDE…           the proofs of these guides only
  npm run prove -- --content DIR    another folder of content
  npm run prove -- --language XX    only how whole and how easy to read a language is`;

function tellAll(problems: readonly Problem[]): void {
  for (const problem of problems) console.error(tellProblem(problem));
}

function tellLanguage(content: Content, language: string): number {
  const report = languageReport(content, language);
  if (!report.ok) {
    tellAll(report.error);
    return 2;
  }
  console.log(languageLines(report.value).join('\n'));
  return languageHolds(report.value) ? 0 : 1;
}

/** A guide that breaks a property, or a language that is not whole, can at least be read. */
function status(problems: readonly Problem[]): number {
  const unusable = problems.some(({ about }) => about !== 'proof' && about !== 'translation');
  return unusable ? 2 : problems.length > 0 ? 1 : 0;
}

function report(content: Content, wanted: readonly string[], json: boolean): number {
  const problems = checkContent(content);
  const proofs = provedGuides(content);
  const known = proofs.ok ? proofs.value : [];
  const unknown = wanted.filter((name) => !known.some(({ guide }) => String(guide.id) === name));
  if (proofs.ok && unknown.length > 0) {
    const names = known.map(({ guide }) => guide.id).join(', ');
    console.error(`There is no guide "${unknown.join('", "')}". There is: ${names}.\n${USAGE}`);
    return 2;
  }
  const shown = known.filter(({ guide }) => wanted.length === 0 || wanted.includes(guide.id));
  const firm = content.firm();
  const others = firm.ok && wanted.length === 0 ? firm.value.languages : [];
  const reports = others
    .filter((language) => language !== SOURCE)
    .map((language) => languageReport(content, language))
    .flatMap((one) => (one.ok ? [one.value] : []));
  if (json) {
    const told = problems.map((problem) => ({ ...problem, ...tell(problem) }));
    const guides = shown.map(proofJson);
    console.log(JSON.stringify({ guides, languages: reports, problems: told }, null, 2));
  } else {
    for (const one of shown) console.log(proofLines(one).join('\n'));
    for (const one of reports) console.log(languageLines(one).join('\n'));
    const log = content.hazards();
    if (log.ok && wanted.length === 0) {
      const { hazards, controls, evidence, outside } = hazardCounts(log.value);
      console.log(
        `Hazard log: ${String(hazards)} hazards, ${String(controls)} controls, ${String(evidence)} pieces of evidence; ${String(outside)} hazards wholly or partly outside our reach.`,
      );
    }
    tellAll(problems);
  }
  return status(problems);
}

function main(): number {
  const { values, positionals } = options(
    {
      options: {
        content: { type: 'string' },
        json: { type: 'boolean', default: false },
        language: { type: 'string' },
      },
      allowPositionals: true,
    },
    USAGE,
  );
  if (values.content !== undefined && !existsSync(values.content)) {
    console.error(`${values.content}: There is no such folder.\n${USAGE}`);
    return 2;
  }
  const content = values.content === undefined ? ownContent() : openContent(values.content);
  if (values.language !== undefined) return tellLanguage(content, values.language);
  return report(content, positionals, values.json);
}

process.exitCode = main();
