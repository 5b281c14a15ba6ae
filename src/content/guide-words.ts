/** Words for what is wrong with a guide's file: what it is, and what to do about it. */
import type { GuideTrouble } from '../guide/problem.ts';

export interface ProblemWords {
  readonly what: string;
  readonly hint: string;
}

const list = (names: readonly string[]): string => names.join(', ');

/** English for the authors of guides. */
export function tellTrouble(trouble: GuideTrouble): ProblemWords {
  switch (trouble.code) {
    case 'yaml-syntax':
      return {
        what: `This is not YAML (${trouble.reason}).`,
        hint: 'Check indentation, brackets, quotes and keys given twice at this place.',
      };
    case 'key-missing':
      return {
        what: `"${trouble.key}" is missing${trouble.path ? ` in ${trouble.path}` : ''}.`,
        hint: `Add a line "${trouble.key}: …".`,
      };
    case 'key-unknown':
      return {
        what: `"${trouble.key}" is not a key ${trouble.path ? `of ${trouble.path}` : 'of a guide'}.`,
        hint: 'Correct its spelling or take it out; the keys are in src/guide/schema.ts.',
      };
    case 'value-wrong':
      return {
        what: `${trouble.path || 'The file'} has the wrong form; expected: ${trouble.expected}.`,
        hint: 'Compare with a node of the same kind in content/guides/door-locked/graph.yaml.',
      };
    case 'value-unknown':
      return {
        what: `${trouble.path} has a value that is not on its list.`,
        hint: `Use one of: ${list(trouble.allowed)}.`,
      };
    case 'name-malformed':
      return {
        what: `"${trouble.name}" cannot be a name.`,
        hint: 'Names are small letters, digits and single hyphens, and not a number alone.',
      };
    case 'stop-without-call':
      return {
        what: `The stop ${trouble.node} names nobody to call.`,
        hint: 'Add "call: [technician]", or "call: [emergency, …]" for an emergency.',
      };
    case 'step-without-action':
      return {
        what: `The step ${trouble.node} has no action.`,
        hint: 'Add "action: …" from the closed list in src/guide/types.ts.',
      };
    case 'unsure-missing':
      return {
        what: `${trouble.node} has no answer "unsure".`,
        hint: 'Add "unsure: { to: … }" leading somewhere safe: not to know is always possible.',
      };
    case 'end-with-answers':
      return {
        what: `${trouble.node} ends the guide and yet has answers.`,
        hint: 'Take the answers out, or make it a question or a step.',
      };
    case 'start-unknown':
      return {
        what: `The start "${trouble.start}" is not a node of this file.`,
        hint: 'Name the danger question as the start.',
      };
    case 'start-not-question':
      return {
        what: `The start "${trouble.start}" is not a question.`,
        hint: 'Start with the danger question.',
      };
    case 'track-repeated':
      return { what: `The track "${trouble.track}" is listed twice.`, hint: 'Take one out.' };
    case 'track-unknown':
      return {
        what: `"${trouble.track}" is not a track of this guide.`,
        hint: 'Correct its spelling, or add it to "tracks" at the top of the file.',
      };
    case 'target-unknown':
      return {
        what: `${trouble.node}, answer ${trouble.answer}, leads to "${trouble.target}", which is no node.`,
        hint: 'Correct the name after "to", or add the node.',
      };
    case 'target-missing':
      return {
        what: `${trouble.node}, answer ${trouble.answer}, leads nowhere on the track "${trouble.track}".`,
        hint: `Add "${trouble.track}: …" to its "to".`,
      };
    case 'wrong-track':
      return {
        what: `${trouble.node}, answer ${trouble.answer}, leads to ${trouble.target} on the track "${trouble.track}", which is for "${trouble.only}" only.`,
        hint: `Give "to" another target for the track "${trouble.track}".`,
      };
    case 'text-unknown':
      return {
        what: `${trouble.node} borrows the sentences of "${trouble.text}", which is no node.`,
        hint: 'Name a node of this file after "text", or take the line out.',
      };
    case 'fact-set-and-cleared':
      return {
        what: `An answer of ${trouble.node} both sets and clears "${trouble.fact}".`,
        hint: 'Keep the one that is true after the answer.',
      };
    case 'flag-unknown':
      return {
        what: `${trouble.answer === undefined ? trouble.node : `${trouble.node}.${trouble.answer}`} raises the flag "${trouble.flag}", which is not in content/flags.yaml.`,
        hint: `Add it there at its place, with words in content/text/*/preview.json, or use one of: ${list(trouble.known)}.`,
      };
    case 'flag-repeated':
      return {
        what: `The flag "${trouble.flag}" stands in the list twice.`,
        hint: 'Take one of them out.',
      };
    case 'danger-hidden':
      return {
        what: `The answer ${trouble.answer} of ${trouble.node} has the name of a danger answer.`,
        hint: 'Give it another name: the danger list is open on every page.',
      };
    case 'name-taken':
      return {
        what: `${trouble.node} and the copy of another node on a track would both be called ${trouble.id}.`,
        hint: 'Rename the node.',
      };
    case 'node-unreachable':
      return {
        what: `No answer leads to ${trouble.node}.`,
        hint: 'Lead an answer to it, or take it out.',
      };
    case 'entry-missing':
      return {
        what: `"entries" names "${trouble.entry}", which is no node of this file.`,
        hint: 'Correct its spelling, or take it out.',
      };
    case 'optional-unknown':
      return {
        what: `"optional" names "${trouble.name}", which this guide does not have then.`,
        hint: 'Name pages of this guide, and after "instead" one that stays.',
      };
    case 'rule-unknown':
      return {
        what: `A rule names "${trouble.name}", which this guide does not have.`,
        hint: 'Name a page by its text key, an answer as "page.answer".',
      };
    case 'page-of-block':
      return {
        what: `${trouble.node} is a page of the block ${trouble.block}, too.`,
        hint: 'Take it out, so that it is impossible for the two to become unlike each other; or give it another name.',
      };
    case 'page-repeated':
      return {
        what: `${trouble.node} is a page of the block ${trouble.block}, too.`,
        hint: 'Keep one of the two, or rename one: answers lead to pages of all blocks by name.',
      };
    case 'block-unknown':
      return {
        what: `"blocks" names "${trouble.block}", which is no block.`,
        hint: `Use one of: ${list(trouble.known)}; or add content/blocks/${trouble.block}.yaml.`,
      };
    case 'exit-unknown':
      return {
        what: `The block ${trouble.block} has no exit "${trouble.exit}".`,
        hint: `Use one of: ${list(trouble.known)}; or add it to "exits" in content/blocks/${trouble.block}.yaml.`,
      };
    case 'exit-unwired':
      return {
        what: `${trouble.node}, answer ${trouble.answer}, takes the exit "${trouble.exit}" of the block ${trouble.block}, and this guide does not say where that leads.`,
        hint: `Add "${trouble.block}: { ${trouble.exit}: … }" to "blocks" at the top of the file.`,
      };
    case 'exit-unused':
      return {
        what: `Nothing here leads to the exit "${trouble.exit}" of the block ${trouble.block}.`,
        hint: 'Take it out, or lead an answer to a page that takes it.',
      };
    case 'rule-unused':
      return {
        what: `No guide has the pages that this rule of the block ${trouble.block} names.`,
        hint: 'Name pages and answers of blocks, or move the rule into a guide.',
      };
    case 'guide-unknown':
      return {
        what: `${trouble.node}, answer ${trouble.answer}, leads into "${trouble.guide}", which is no guide.`,
        hint: 'Write "guide/node" with the name of a folder in content/guides.',
      };
    case 'entry-unknown':
      return {
        what: `${trouble.node}, answer ${trouble.answer}, leads to "${trouble.target}" of ${trouble.guide}, which is not among its entries.`,
        hint: `Use one of: ${list(trouble.entries)}; or add it to "entries" in that guide's file.`,
      };
    case 'entry-off-track':
      return {
        what: `${trouble.node}, answer ${trouble.answer}: no journey of ${trouble.guide} comes to "${trouble.target}" on the track "${trouble.track}".`,
        hint: 'Name another "track" of that guide, or another entry.',
      };
    case 'dangers-differ':
      return {
        what: `${trouble.node}, answer ${trouble.answer}: ${trouble.guide} has other danger answers than this guide.`,
        hint: 'Let both guides start with the same block.',
      };
    case 'guide-circle':
      return {
        what: `These guides hand over in a circle: ${[...trouble.guides, trouble.guides[0]].join(' → ')}.`,
        hint: 'Let one of them end in a stop or finish of its own instead.',
      };
    case 'loop':
      return {
        what: `These lead round in a circle: ${[...trouble.nodes, trouble.nodes[0]].join(' → ')}.`,
        hint: 'Let one of their answers lead on instead of back.',
      };
  }
}
