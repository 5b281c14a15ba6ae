/** A guide's proof as lines for people and as plain values for machines. */
import type { CounterExample, Verdict } from '../proof/prove.ts';
import { pageGrade, passages } from '../proof/sentences.ts';
import type { GuideSentences, NodeSentences } from '../proof/sentences.ts';
import { guidesOf, isOwn, ownNodes } from '../guide/ids.ts';
import type { Guide } from '../guide/types.ts';
import { spokenGrade, tellJourney } from '../content/proofs.ts';
import type { Proved } from '../content/proofs.ts';
import { propertyWords, tellFault } from '../content/proof-words.ts';
import { guideVersion } from '../content/reviews.ts';
import { spoken } from '../placeholders.ts';
import { hardest } from '../text/readability.ts';

const MOST_HARD_SENTENCES = 10;
/** Beyond this many faults of one property a list helps nobody; the count is told. */
const MOST_FAULTS = 12;

/** The guide's own pages' sentences: another guide's are told of with that guide. */
function ownSentences(sentences: GuideSentences): [string, NodeSentences][] {
  return Object.entries(sentences).filter(([id]) => isOwn({ id }));
}

function pageGrades(sentences: GuideSentences): { page: string; grade: number }[] {
  return ownSentences(sentences).map(([page, own]) => ({
    page,
    grade: Math.round(pageGrade(own, spokenGrade) * 100) / 100,
  }));
}

function hardestOf(sentences: GuideSentences) {
  const all = ownSentences(sentences)
    .flatMap(([, own]) => passages(own))
    .map((passage) => spoken(passage));
  return hardest(all, MOST_HARD_SENTENCES);
}

function figures(count: bigint | null): string {
  return count === null ? 'endless' : count.toLocaleString('en');
}

function counterLines(proved: Proved, { fault, journey }: CounterExample): string[] {
  const { what, hint } = tellFault(fault);
  const told = tellJourney(proved, journey);
  const node = proved.guide.nodes.get(fault.node);
  const title = node && proved.sentences[node.sentences]?.title;
  return [
    `      ${what}`,
    ...(told.length > 0 ? ['      A journey that shows it:'] : []),
    ...told.map((line, index) => `        ${index + 1}. ${line}`),
    ...(title === undefined ? [] : [`      Page ${fault.node}: “${title}”`]),
    `      What to do: ${hint}`,
  ];
}

function verdictLines(proved: Proved, verdict: Verdict): string[] {
  const { id, holds, faults, journeysConcerned, counterExample } = verdict;
  const others = faults.filter((fault) => fault !== counterExample?.fault);
  return [
    `  ${holds ? 'holds' : 'FAILS'}  ${id}: ${propertyWords[id]}`,
    `         ${figures(journeysConcerned)} journeys concerned`,
    ...(counterExample ? counterLines(proved, counterExample) : []),
    ...others.slice(0, MOST_FAULTS).map((fault) => `      Also: ${tellFault(fault).what}`),
    ...(others.length > MOST_FAULTS ? [`      And ${others.length - MOST_FAULTS} more.`] : []),
  ];
}

function handsOver(guide: Guide): string {
  const others = guidesOf(guide);
  if (others.length === 0) return '';
  const joined = guide.nodes.size - ownNodes(guide).length;
  return `, and ${joined} more of ${others.join(', ')}, which it hands over to`;
}

/** Lines for people. */
export function proofLines(proved: Proved): string[] {
  const { guide, file, proof, sentences } = proved;
  const { all, complete, shortest, longest } = proof.journeys;
  const grades = pageGrades(sentences).toSorted((a, b) => b.grade - a.grade);
  const own = ownNodes(guide);
  const shared = own.filter(({ block }) => block !== undefined).length;
  return [
    `${guide.id} (${file})`,
    `  ${own.length} pages, ${shared} of them from blocks${handsOver(guide)}. ${figures(all)} journeys, unfinished ones too; ${figures(complete)} come to an end, after ${shortest ?? '?'} to ${longest ?? '?'} answers. All are covered.`,
    `  Version '${guideVersion(guide, sentences)}', which a reviewer signs in reviews.yaml.`,
    '',
    ...proof.verdicts.flatMap((verdict) => verdictLines(proved, verdict)),
    '',
    '  Reading grade of each page (Flesch–Kincaid, 6 is the most):',
    ...grades.map(({ page, grade }) => `  ${grade.toFixed(1).padStart(6)}  ${page}`),
    '',
    '  The hardest sentences, each by itself:',
    ...hardestOf(sentences).map(
      ({ sentence, grade }) => `  ${grade.toFixed(1).padStart(6)}  ${sentence}`,
    ),
    '',
  ];
}

/** Plain values for machines. Counts are decimal strings: they can pass 2^53. Null is endless. */
export function proofJson({ guide, file, proof, sentences }: Proved) {
  const text = (count: bigint | null): string | null => count?.toString() ?? null;
  return {
    guide: guide.id,
    file,
    version: guideVersion(guide, sentences),
    holds: proof.holds,
    pages: ownNodes(guide).length,
    handsOverTo: guidesOf(guide),
    journeys: {
      all: text(proof.journeys.all),
      complete: text(proof.journeys.complete),
      shortest: proof.journeys.shortest,
      longest: proof.journeys.longest,
    },
    properties: proof.verdicts.map((verdict) => ({
      ...verdict,
      journeysCovered: text(verdict.journeysCovered),
      journeysConcerned: text(verdict.journeysConcerned),
    })),
    grades: pageGrades(sentences),
    hardest: hardestOf(sentences),
  };
}
