/** Problems of content in words, for whoever edits it. */
import { LEAST_APART, LEAST_CONTRAST } from './colors.ts';
import { tellTrouble } from './guide-words.ts';
import type { ProblemWords } from './guide-words.ts';
import { tellModelTrouble } from './model-words.ts';
import type { FileTrouble, Problem } from './problem.ts';
import { propertyWords, tellFault } from './proof-words.ts';
import { tellTranslation } from '../text/language-words.ts';

/** What YAML allows and this content does not take. */
const refused: Readonly<Record<string, string>> = {
  ALIAS: 'an alias (*)',
  ANCHOR: 'an anchor (&)',
  MERGE_KEY: 'a merge key (<<)',
};

function tellFile(trouble: FileTrouble): ProblemWords {
  switch (trouble.code) {
    case 'not-utf8':
      return {
        what: 'It is not saved as UTF-8, so letters with accents would come out wrong.',
        hint: 'Save it again as UTF-8: most editors ask for the encoding under "Save as".',
      };
    case 'missing':
      return { what: 'There is no such file to read.', hint: 'Write it, or correct the name.' };
    case 'syntax': {
      const kind = refused[trouble.reason];
      return kind === undefined
        ? {
            what: `This cannot be parsed (${trouble.reason}).`,
            hint: 'Check indentation, commas, quotes and brackets at this place.',
          }
        : {
            what: `This has ${kind}: a value that stands elsewhere.`,
            hint: 'Write the value out, so that whoever reads this place sees it.',
          };
    }
    case 'duplicate-key':
      return {
        what: `This key is given twice: here and in line ${String(trouble.first)}.`,
        hint: 'Keep one of the two, or give the other a name of its own.',
      };
    case 'key-missing':
      return {
        what: `"${trouble.key}" is missing${trouble.path ? ` in ${trouble.path}` : ''}.`,
        hint: `Add "${trouble.key}".`,
      };
    case 'key-unknown':
      return {
        what: `"${trouble.key}" is not a key ${trouble.path ? `of ${trouble.path}` : 'of this file'}.`,
        hint: 'Correct its spelling, or take it out.',
      };
    case 'shape':
      return {
        what: `${trouble.path || 'The file'} has the wrong form (${trouble.reason}).`,
        hint: 'Correct it here: its neighbors and comments show the form; src/content/schema has it whole.',
      };
    case 'name-unknown':
      return {
        what: `"${trouble.name}" is not in ${trouble.among}.`,
        hint: 'Correct its spelling, or add it there.',
      };
    case 'release-misnamed':
      return {
        what: `This is release ${String(trouble.release)}.`,
        hint: `Name the file ${String(trouble.release)}.json.`,
      };
    case 'release-missing':
      return {
        what: `Release ${String(trouble.release)} is missing.`,
        hint: 'Bring its file back: its codes could not be read.',
      };
    case 'guide-misnamed':
      return {
        what: `This is the guide "${trouble.guide}", in the folder "${trouble.folder}".`,
        hint: 'Name both alike.',
      };
    case 'demo-broken':
      return {
        what: `No code can be written for the visit "${trouble.id}" (${trouble.reason}).`,
        hint: 'Let its answers follow the guide as the newest release has it.',
      };
    case 'staff-language-first':
      return {
        what: `The first language, "${trouble.language}", has no pages for staff.`,
        hint: 'Put one first that has "staff: true" in languages.yaml.',
      };
    case 'color-pale':
      return {
        what: `In the ${trouble.theme} theme this color has a contrast of ${trouble.is.toFixed(1)} to 1 with "${trouble.other}"; ${String(LEAST_CONTRAST)} to 1 is the least.`,
        hint: trouble.theme === 'light' ? 'Take a darker color.' : 'Take a lighter color.',
      };
    case 'color-near':
      return {
        what: `In the ${trouble.theme} theme this color is too near to that of "${trouble.other}" (CIEDE2000 ${trouble.is.toFixed(1)}; ${String(LEAST_APART)} is the least, for readers with color blindness too).`,
        hint: 'Take another: colors of danger and caution mean nothing else here.',
      };
    case 'logo-heavy':
      return {
        what: `The logo has ${String(trouble.bytes)} bytes; ${String(trouble.most)} is the most.`,
        hint: 'Every page loads it: save it smaller, for example as a plain SVG.',
      };
    case 'region-word':
      return {
        what: `“${trouble.found}” is not said in ${trouble.region}.`,
        hint: `Add what ${trouble.region} says instead under ${trouble.region}.say in content/regions.yaml; in firm.yaml, correct it here.`,
      };
    case 'region-phrase':
      return {
        what: `No English sentence says “${trouble.phrase}” any more.`,
        hint: 'Put the phrase as the sentence now has it, or take it out.',
      };
    case 'region-emergency':
      return {
        what: `This is not the emergency number of ${trouble.region}.`,
        hint: `Put ${trouble.numbers.join(' or ')}, or correct "region".`,
      };
    case 'region-language':
      return {
        what: `The region ${trouble.region} has no words of its own in "${trouble.language}".`,
        hint: 'Take the language out: outside the US the site speaks English only.',
      };
    case 'sentence-missing':
      return {
        what: `There is no sentence ${trouble.key}, which ${trouble.by} asks for.`,
        hint: 'Write it here, and in every other language.',
      };
    case 'sentence-empty':
      return { what: `The sentence ${trouble.key} is empty.`, hint: 'Write it.' };
    case 'sentence-unused':
      return {
        what: `No page shows the sentence ${trouble.key}.`,
        hint: 'Take it out in every language, or correct its name.',
      };
    case 'release-of-others':
      return {
        what: `"${trouble.switch}" is off, and release ${String(trouble.release)} is not of guides without it: codes would say something else.`,
        hint: 'Freeze a release of this copy: npm run release, then node tests/vectors/make.ts.',
      };
    case 'recall-above':
      return {
        what: `It recalls all copies below release ${String(trouble.least)}, and the newest is release ${String(trouble.newest)}: nothing could replace them.`,
        hint: 'Name a release that is there, or freeze the next one first: npm run release.',
      };
    case 'recall-page':
      return {
        what: `It recalls ${trouble.page}, and no release has or had such a page.`,
        hint: 'Name a page by its address, /guide/page/, or a whole guide, /guide/.',
      };
    case 'drawing-does':
      return {
        what: `The drawing "${trouble.name}" shows a deed that this page does not ask for.`,
        hint: 'Name another drawing; src/site/drawings/shows.yaml says what each shows, and does.',
      };
    case 'flag-unused':
      return {
        what: `No answer raises the flag "${trouble.flag}", and no stop.`,
        hint: 'Raise it with "flag: …" in a graph, or take it and its words out.',
      };
    case 'hazard-open':
      return {
        what: `The hazard "${trouble.hazard}" has no ${trouble.lacks}.`,
        hint: 'Add them. If nothing controls it, say so: controls: { outside-our-reach: true }.',
      };
    case 'hazard-none':
      return trouble.what === 'page'
        ? {
            what: `No hazard of death or serious injury names ${trouble.name}, which warns of one.`,
            hint: 'Name it under the pages of the hazard it controls, in content/hazards.yaml.',
          }
        : {
            what: `No hazard names ${trouble.name}, a property of the proof.`,
            hint: 'Name it under the properties of the hazard it controls.',
          };
    case 'sentence-of-block':
      return {
        what: `${trouble.key} has the name of a block's page, whose sentences are in blocks.json.`,
        hint: 'Take it out in every language: a page of a block says the same in every guide.',
      };
    case 'too-hard':
      return {
        what: `${trouble.page} scores ${trouble.score.toFixed(1)} (${trouble.formula}); ${String(trouble.least)} is the least.`,
        hint: 'Use shorter sentences and shorter words.',
      };
  }
}

/** What is wrong, and what to do next. */
export function tell(problem: Problem): ProblemWords {
  const { what, hint } = tellOf(problem);
  const where = problem.off?.map((name) => `"${name}: false"`).join(' and ');
  return { what: where === undefined ? what : `With ${where} in firm.yaml: ${what}`, hint };
}

function tellOf(problem: Problem): ProblemWords {
  switch (problem.about) {
    case 'file':
      return tellFile(problem.trouble);
    case 'guide':
      return tellTrouble(problem.trouble);
    case 'model':
      return tellModelTrouble(problem.trouble);
    case 'translation':
      return tellTranslation(problem.trouble);
    case 'proof': {
      const { property, fault, guide, journey, more } = problem.trouble;
      const { what, hint } = tellFault(fault);
      const steps = journey.map((step, index) => `\n      ${String(index + 1)}. ${step}`);
      const shown = steps.length > 0 ? `\n    A journey that shows it:${steps.join('')}` : '';
      const others =
        more > 0 ? `\n    Also at ${String(more)} more ${more === 1 ? 'place' : 'places'}.` : '';
      return {
        what: `${what} This breaks the promise ${property} of the guide ${guide}: ${propertyWords[property]}${shown}${others}`,
        hint,
      };
    }
  }
}

/** `file:line:column: what` and the hint under it. */
export function tellProblem(problem: Problem): string {
  const { what, hint } = tell(problem);
  const { file, place } = problem;
  return `${file}:${String(place.line)}:${String(place.column)}: ${what}\n    ${hint}`;
}

/** A list longer than this helps nobody; the rest is counted. */
const MOST = 30;

/** All problems, each with its place and hint. */
export function tellProblems(problems: readonly Problem[]): string {
  const rest = problems.length - MOST;
  return [
    `The content has ${problems.length === 1 ? 'a problem' : `${String(problems.length)} problems`}. Nothing is built until this is fixed.`,
    ...problems.slice(0, MOST).map(tellProblem),
    ...(rest > 0 ? [`And ${String(rest)} more.`] : []),
  ].join('\n');
}
