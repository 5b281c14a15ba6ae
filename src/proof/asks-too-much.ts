/** English words by which a sentence asks for what no owner is asked to do. */
const asking: readonly RegExp[] = [
  // A tool.
  /\b(?:tools?|screw ?drivers?|pliers|wrench(?:es)?|hammers?|drills?|kni(?:fe|ves)|scissors|scrapers?|chisels?|saws?|crow ?bars?|pry ?bars?|coat hangers?|(?:multi|volt|ohm)?meters?)\b/giu,
  // A cover taken off.
  /\bunscrew\b|\b(?:remove|take off|lift off|pull off|loosen|undo)\b[^,;]{0,30}\b(?:covers?|panels?|plates?|screws?|bolts?|trim|back|top)\b|\b(?:open|off)\b[^,;]{0,20}\bcovers?\b/giu,
  // The range moved; a door, knob, lever or breaker of it may be.
  /\bunplug\b|\b(?:move|pull|push|slide|drag|tip|tilt|lift|roll|shift)\s+(?:(?:out|the|your|this|whole)\s+)*(?:range|stove|oven|cooker)\b(?!['’]s|\s+(?:door|knob|control|lever|handle|rack|selector|switch|button|key|breaker))|\b(?:pull|slide|drag|roll)\s+it\s+(?:out|forward|away)\b/giu,
  // A wire touched.
  /\b(?:touch|move|pull|disconnect|connect|cut|check|test|join|loosen|tighten)\b[^,;]{0,30}\b(?:wires?|wiring|cables?|cords?|terminals?)\b/giu,
  // Force: as a command, not as what force does ("Force bends it").
  /(?<=^|[,;:(]\s*|\b(?:and|or|but|so|to|then|please|just|now|can|may|must|should)\s+)(?:force|pry|prise|yank|jerk|slam|bang|hit|kick|shake|break|bend|twist)\b(?!\s+(?:can|may|will|bends|breaks|harms)\b)|\b(?:use|using|with|more|some|by)\s+(?:\w+\s+){0,2}force\b|\b(?:forcing|prying)\b|\b(?:pull|push|press|tug|turn|lean|hold)\b[^,;]{0,15}\bhard(?:er)?\b/giu,
];

/** A word that turns what follows it in the same clause into its contrary. */
const negation = /\b(?:do not|don['’]t|never|no|not|without|cannot|can['’]t|avoid|instead of)\b/iu;
/** Where a clause, and with it a negation's reach, ends. */
const boundary = /[.;:!?–—]|\b(?:but|then|instead(?! of)|unless|until|except)\b/iu;

function isNegated(before: string): boolean {
  return negation.test(before.split(boundary).at(-1) ?? '');
}

/**
 * What a passage asks for that no step may ask for, with the sentence it is in. What it
 * warns against ("Do not force it") is not asked for. English only; a list of words can
 * miss a new way to say it, so it backs an author's care and does not replace it.
 */
export function asksTooMuch(
  passage: string,
): readonly { readonly words: string; readonly sentence: string }[] {
  const sentences = [...new Intl.Segmenter('en', { granularity: 'sentence' }).segment(passage)];
  return sentences.flatMap(({ segment }) =>
    asking.flatMap((words) =>
      [...segment.matchAll(words)]
        .filter((match) => !isNegated(segment.slice(0, match.index)))
        .map(([found]) => ({ words: found, sentence: segment.trim() })),
    ),
  );
}
