/** The argument of the safety case as a tree of claims, made of the log and of what runs found. */
import { basename, dirname } from 'node:path';
import { linksOf } from '../../content/hazards.ts';
import type { Link } from '../../content/hazards.ts';
import { firm, guides, hazards, releases, reviews, safety, versionOf } from '../../content/load.ts';
import { propertyWords } from '../../content/proof-words.ts';
import { signatures } from '../../content/reviews.ts';
import { groups } from '../../content/schema/hazards.ts';
import type { Hazard } from '../../content/schema/hazards.ts';
import type { PropertyId } from '../../proof/property.ts';
import { codeScore, dated, number, slipScore } from './figures.ts';

/** The elements of the Goal Structuring Notation (GSN Community Standard 3, SCSC-141C) in use here. */
type Kind = 'goal' | 'strategy' | 'context' | 'assumption' | 'solution';

export interface Claim {
  /** A letter for its kind and a number: G1, S1, C1, A1, Sn1. */
  readonly id: string;
  readonly kind: Kind;
  readonly says: string;
  /** Where more is told, from the safety page. */
  readonly href?: string | undefined;
  /** Nothing shows it yet, or not all of it. */
  readonly undeveloped?: boolean | undefined;
  /** In what context, and under which assumptions, it is claimed. */
  readonly given?: readonly Claim[];
  /** What supports it. */
  readonly by?: readonly Claim[];
}

/** A hazard's place in the log. */
export const anchor = (hazard: string): string => `#hazard-${hazard}`;
/** A name as words. */
export const spelled = (name: string): string => name.replaceAll('-', ' ');

const letters = {
  goal: 'G',
  strategy: 'S',
  context: 'C',
  assumption: 'A',
  solution: 'Sn',
} as const;

/** Makes claims, numbered by kind in the order in which they are made. */
function numbering() {
  const counts = new Map<Kind, number>();
  return (kind: Kind, says: string, rest: Omit<Claim, 'id' | 'kind' | 'says'> = {}): Claim => {
    const next = (counts.get(kind) ?? 0) + 1;
    counts.set(kind, next);
    return { id: `${letters[kind]}${String(next)}`, kind, says, ...rest };
  };
}

const tested = (file: string): string => `Tested: ${basename(file)} in tests/${dirname(file)}`;

/** What a piece of evidence says as a solution: a test by its file, whatever it is called. */
function evidenceSays({ kind, name }: Link): string {
  if (kind === 'properties') return `Proved on every journey. ${propertyWords[name as PropertyId]}`;
  if (kind === 'mutants') return `Slips of this kind are caught: ${name}`;
  if (kind === 'bench') return `Measured: ${name}.ts in tests/bench`;
  return tested(name.split(': ')[0] ?? '');
}

/** The link to a group of hazards on the page; its id is what follows the sign. */
export const groupLink = (group: string): string =>
  '#'.concat(group.toLowerCase().replace(/\W+/g, '-'));

/** The whole argument, its top goal first; the parts for each group of hazards are among it. */
export function argument(): Claim {
  const make = numbering();
  const log = Object.entries(hazards());
  const known = guides();
  const found = safety();
  const shown = new Map<string, Claim>();
  const solution = (says: string): Claim => {
    const claim = shown.get(says) ?? make('solution', says);
    shown.set(says, claim);
    return claim;
  };
  const ofHazard = ([id, hazard]: readonly [string, Hazard]): Claim => {
    const evidence = linksOf(hazard).filter(({ part }) => part === 'evidence');
    const outside = hazard.controls['outside-our-reach'];
    return make('goal', `Controlled: ${spelled(id)}`, {
      href: anchor(id),
      undeveloped: outside,
      by: [...new Set(evidence.map(evidenceSays))].map(solution),
    });
  };
  /** A goal shown by what a run found; undeveloped where it was not run, or showed something else. */
  const byRun = (says: string, run: string | undefined, holds = true): Claim =>
    make(
      'goal',
      says,
      run === undefined ? { undeveloped: true } : { undeveloped: !holds, by: [solution(run)] },
    );

  const context = [
    make(
      'context',
      `Release ${String(releases().length)}, region ${firm().region}, ${String(known.length)} guides`,
      { href: '#versions' },
    ),
    make('context', `The hazard log: ${String(log.length)} hazards`, { href: '#log' }),
    make('assumption', 'Readers read the page and answer as well as they can.'),
  ];
  const top = make(
    'goal',
    'Whoever follows a guide is put in no danger by it that this site can keep away.',
    { given: context },
  );
  const overHazards = make('strategy', 'By each hazard in the log, in groups');
  const inGroups = groups.map((group) => {
    const own = log.filter(([, hazard]) => hazard.group === group);
    const outside = own.some(([, { controls }]) => controls['outside-our-reach']);
    const claim = make('goal', `${group}: ${String(own.length)} hazards controlled`, {
      href: groupLink(group),
      undeveloped: outside,
    });
    return { claim, own };
  });
  const { provers, slips, code, eyes } = found;
  const signed = known.filter(
    (guide) => signatures(reviews(), guide.id, versionOf(guide)).current.length > 0,
  );
  const overTrust = make('strategy', 'By whether the evidence itself can be trusted');
  const trust = [
    byRun(
      'Two provers that share no code say the same.',
      provers &&
        `${number(Object.keys(provers.guides).length)} guides and ${number(provers.slips.compared)} copies with a slip, ${dated(provers)}`,
      provers?.slips.unequal === 0 && Object.values(provers.guides).every(({ equal }) => equal),
    ),
    byRun(
      'The proof finds unsafe slips in a guide.',
      slips && slipScore(slips).told,
      slips && slipScore(slips).all,
    ),
    byRun(
      'The tests of the prover find slips in it.',
      code && codeScore(code).told,
      code && codeScore(code).all,
    ),
    byRun('What is proved is what is served.', tested('built/graph.test.ts')),
    byRun(
      'People with disabilities can use the pages.',
      eyes &&
        `${number(eyes.pages)} pages, ${number(Object.keys(eyes.engines).length)} engines besides axe, ${dated(eyes)}`,
      eyes && Object.values(eyes.engines).every(({ findings, decided }) => findings === decided),
    ),
    byRun(
      'A licensed technician agrees with each guide.',
      signed.length === 0
        ? undefined
        : `${String(signed.length)} of ${String(known.length)} guides signed`,
      signed.length === known.length,
    ),
    byRun('Real people act as the guides expect.', undefined),
  ];
  return {
    ...top,
    by: [
      {
        ...overHazards,
        by: inGroups.map(({ claim, own }) => ({ ...claim, by: own.map(ofHazard) })),
      },
      { ...overTrust, by: trust },
    ],
  };
}
