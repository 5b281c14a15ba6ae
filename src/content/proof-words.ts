/** Words for the proof: what each property says, and what is wrong where it fails. */
import type { Fault, PropertyId } from '../proof/property.ts';
import type { ProblemWords } from './guide-words.ts';

export const propertyWords: Readonly<Record<PropertyId, string>> = {
  'danger-first':
    'The danger question comes first; each danger ends at its own stop, for today at the latest.',
  'heat-only-when-safe':
    'Nothing that heats after an error, with anything inside, a forced door, or an oven not cool.',
  'breaker-once-and-ready':
    'The breaker only after the panel was found fit, off at most once; if it trips it stays off.',
  'actions-listed':
    'Every step is on the closed list; none asks for a tool, a cover, a wire, the range or force.',
  'journeys-end':
    'Every journey ends within 25 answers: no dead end, no loop, nothing unreachable.',
  'stops-call-and-warn': 'Every stop names whom to call (emergencies first) and what not to do.',
  'door-only-when-cool': 'No step touches the door before the oven has cooled.',
  'sentences-plain': 'Every key has its sentence; every page reads at grade 6 or lower.',
  'unsure-everywhere': 'Every question and step can be answered "I am not sure".',
  'unsure-is-no-alarm':
    '"I am not sure" raises no flag and ends at nothing urgent, but for the danger question.',
  'done-only-when-well':
    'No one is told that the range is fine after an error, a forced door, a trip or other trouble.',
  'rules-kept': 'What the guide promises of itself in its "rules" holds.',
};

/** English for the authors of guides. */
export function tellFault(fault: Fault): ProblemWords {
  const at = fault.node;
  switch (fault.code) {
    case 'start-missing':
      return { what: `The start ${at} is not there.`, hint: 'Name the danger question.' };
    case 'start-not-question':
      return {
        what: `The start ${at} is not a question.`,
        hint: 'Start with the danger question.',
      };
    case 'none-missing':
      return {
        what: `${at} has no answer "none" that goes on.`,
        hint: 'Exactly the answer "none" leads on; every other one ends at a stop.',
      };
    case 'no-danger-answers':
      return { what: `${at} asks about no danger.`, hint: 'Add the danger answers.' };
    case 'not-own-stop':
      return {
        what: `${at}, answer ${fault.answer}, does not end at its own stop.`,
        hint: `Lead it to a stop with "danger: ${fault.answer}" and "urgency: emergency" or "today".`,
      };
    case 'danger-unasked':
      return {
        what: `The stop ${at} is for the danger "${fault.answer}", which the start does not ask about.`,
        hint: 'Add the answer to the danger question, or take "danger" out of the stop.',
      };
    case 'exits-differ':
      return {
        what: `The danger list of the other pages differs from the start in: ${fault.answers.join(', ')}.`,
        hint: 'Each danger answer has to lead to a stop.',
      };
    case 'heat-despite':
      return {
        what: `${at} can heat the oven, and is reached although "${fault.fact}".`,
        hint: 'Lead journeys with this fact past it, for example on another track.',
      };
    case 'heat-without':
      return {
        what: `${at} can heat the oven, and is reached without "${fault.fact}".`,
        hint: 'Ask first, and let only the safe answer set the fact and lead here.',
      };
    case 'heat-forgotten':
      return {
        what: `${at}, answer ${fault.answer}, goes on after heat without saying how hot the oven is.`,
        hint: 'Add "clears: [cooled]", or "sets: [cooled]" if the answer says that nothing heated.',
      };
    case 'doubt-left':
      return {
        what: `${at}, answer ${fault.answer}, goes on and leaves open whether "${fault.fact}".`,
        hint: 'Let it set this fact or its contrary.',
      };
    case 'flag-without-fact':
      return {
        what: `${at}, answer ${fault.answer}, raises the flag "${fault.flag}" and does not note it.`,
        hint: `Add "sets: [${fault.flag}]".`,
      };
    case 'error-not-told':
      return {
        what: `${at} takes an error's text, but no error was noted on the way.`,
        hint: 'Add "sets: [error-seen]" to the answers that lead here.',
      };
    case 'panel-not-ready':
      return {
        what: `${at} works the breaker before the panel was found fit.`,
        hint: 'Ask about the panel first; the answer "ready" sets panel-ready.',
      };
    case 'breaker-again':
      return {
        what: `${at} works the breaker after it was switched off and on already.`,
        hint: 'Lead to a stop instead.',
      };
    case 'breaker-not-left':
      return {
        what: `${at}, answer ${fault.answer}, does not end at a stop that leaves the breaker off.`,
        hint: 'Lead it to a stop with "breaker-stays-off: true".',
      };
    case 'action-unlisted':
      return {
        what: `${at} asks for the action "${fault.action}", which is not on the list.`,
        hint: 'Use an action of the closed list in src/guide/types.ts.',
      };
    case 'asks-too-much':
      return {
        what: `${at} asks for "${fault.words}": ${fault.sentence}`,
        hint: 'No step needs a tool, a cover off, the range moved, a wire touched, or force.',
      };
    case 'dead-end':
      return { what: `${at} has no answers and is no end.`, hint: 'Add answers or a stop.' };
    case 'end-goes-on':
      return { what: `${at} is an end and yet has answers.`, hint: 'Take the answers out.' };
    case 'unreachable':
      return { what: `No journey reaches ${at}.`, hint: 'Lead an answer to it or take it out.' };
    case 'leads-nowhere':
      return {
        what: `${at}, answer ${fault.answer}, leads to "${fault.target}", which is no node.`,
        hint: 'Correct the name after "to".',
      };
    case 'loop':
      return {
        what: `These lead round in a circle: ${[...fault.nodes, at].join(' → ')}.`,
        hint: 'Let one of their answers lead on instead of back.',
      };
    case 'too-long':
      return {
        what: `A journey to ${at} takes ${fault.answers} answers; ${fault.most} is the most.`,
        hint: 'Shorten it: leave out a question, or stop earlier.',
      };
    case 'nobody-to-call':
      return { what: `The stop ${at} names nobody to call.`, hint: 'Add "call: [technician]".' };
    case 'emergency-not-first':
      return {
        what: `The emergency stop ${at} does not name the emergency number first.`,
        hint: 'Put "emergency" first in its "call".',
      };
    case 'nothing-warned':
      return { what: `The stop ${at} does not say what not to do.`, hint: 'Fill its "never".' };
    case 'door-while-hot':
      return {
        what: `${at} touches the door, and is reached before the oven has cooled.`,
        hint: 'Lead through the question or the wait that sets "cooled".',
      };
    case 'sentence-missing':
      return {
        what: `The sentence ${fault.key} is missing or empty.`,
        hint: "Write it in the guide's file under content/text/en.",
      };
    case 'too-hard':
      return {
        what: `The page ${at} reads at grade ${fault.grade.toFixed(1)}; ${fault.most} is the most.`,
        hint: 'Use shorter sentences and shorter words.',
      };
    case 'unsure-missing':
      return {
        what: `${at} has no answer "unsure".`,
        hint: 'Add one that leads somewhere safe: not to know is always possible.',
      };
    case 'unsure-flags':
      return {
        what: `${at}, answer ${fault.answer}, raises the flag "${fault.flag}".`,
        hint: 'Take the flag out: not to know tells nothing about the range.',
      };
    case 'unsure-alarms':
      return {
        what: `${at}, answer ${fault.answer}, leads to ${fault.to}, which is urgent.`,
        hint: 'Lead it on, or to a stop with "urgency: soon": not to know is no sign of danger.',
      };
    case 'done-despite':
      return {
        what: `${at} says that the range is fine, and is reached although "${fault.fact}".`,
        hint: 'Lead journeys with this fact to another end, or take "done: true" out.',
      };
    case 'done-urgent':
      return {
        what: `${at} says that the range is fine, and that someone must come.`,
        hint: 'Give it "urgency: none", or take "done: true" out.',
      };
    case 'page-again':
      return {
        what: `A journey comes to ${at} more than ${fault.most} times.`,
        hint: 'Lead on past it, or change the rule in the guide’s file.',
      };
    case 'page-without':
      return {
        what: `${at} is reached without the answer ${fault.answer}, which a rule asks for.`,
        hint: 'Lead through that answer, or change the rule.',
      };
    case 'page-despite':
      return {
        what: `${at} is reached after the answer ${fault.answer}, which a rule forbids.`,
        hint: 'Lead past it after that answer, for example on another track.',
      };
    case 'ends-elsewhere':
      return {
        what: `${at}, answer ${fault.answer}, does not lead at once to ${fault.ends.join(' or ')}.`,
        hint: 'Lead it there, or change the rule.',
      };
  }
}
