/** What a region says instead of the English sentences, and the gate that holds every region to it. */
import { NAMING, sentencesIn } from '../text/glossary.ts';
import { all } from './content.ts';
import type { Content } from './content.ts';
import { textsOf } from './language-report.ts';
import { fileProblem, nameUnknown } from './problem.ts';
import type { Problem } from './problem.ts';
import type { Text } from './read.ts';
import { PRACTICE } from './schema/care.ts';
import type { Firm } from './schema/firm.ts';
import { HOME } from './schema/regions.ts';
import type { Region } from './schema/regions.ts';
import { BLOCKS, SOURCE } from './texts.ts';

const WORD = String.raw`[\p{L}\p{N}]`;
const quoted = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);
const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * A sentence in a region's words: whole words only, the longest phrase first, all in one pass, so
 * that no phrase meets what another put in. One that begins small is found at the head of a
 * sentence, too.
 *
 * @param found is told each phrase that was there
 */
export function regionalSentence(
  { say }: Region,
  found?: (phrase: string) => void,
): (text: string) => string {
  const phrases = Object.keys(say).toSorted((a, b) => b.length - a.length);
  if (phrases.length === 0) return (text) => text;
  const forms = phrases.map((phrase) => {
    const [first = ''] = phrase;
    const either = first === first.toUpperCase() ? quoted(first) : `[${first}${upper(first)}]`;
    return either + quoted(phrase.slice(1));
  });
  const pattern = new RegExp(`(?<!${WORD})(?:${forms.join('|')})(?!${WORD})`, 'gu');
  return (text) =>
    text.replace(pattern, (match) => {
      const [phrase, made] = Object.hasOwn(say, match) ? [match, String] : [lower(match), upper];
      found?.(phrase);
      return made(say[phrase] ?? match);
    });
}

/** A text file's value in a region's words; its sources, too: one that is none there is practice. */
export function regional(
  value: unknown,
  region: Region,
  sentence = regionalSentence(region),
): unknown {
  if (typeof value === 'string') return sentence(value);
  if (Array.isArray(value)) return value.map((inner) => regional(inner, region, sentence));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]: [string, unknown]) => [
      key,
      !NAMING.has(key)
        ? regional(inner, region, sentence)
        : region.sources[String(inner)] === PRACTICE
          ? PRACTICE
          : inner,
    ]),
  );
}

/** The published sources as a region cites them. */
export function regionalSources(
  sources: Readonly<Record<string, string>>,
  region: Region,
): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(sources).map(([name, cited]) => {
      const own = region.sources[name] ?? 'same';
      return [name, own === 'same' ? cited : own];
    }),
  );
}

/** The first pattern of a region's `never` that a text matches. */
function left({ never }: Region, text: string): string | undefined {
  for (const pattern of never) {
    const [found] = new RegExp(pattern, 'u').exec(text) ?? [];
    if (found !== undefined) return found;
  }
  return undefined;
}

function ofRegion(
  [name, region]: readonly [string, Region],
  file: Text,
  texts: readonly Text[],
  sources: Text,
): readonly Problem[] {
  const used = new Set<string>();
  const sentence = regionalSentence(region, (phrase) => used.add(phrase));
  const words = texts.flatMap((text) =>
    sentencesIn(text.value).flatMap(([path, said]) => {
      const found = left(region, sentence(said));
      if (found === undefined) return [];
      return [fileProblem(text, text.valueAt(path), { code: 'region-word', region: name, found })];
    }),
  );
  const unused = Object.keys(region.say).filter((phrase) => !used.has(phrase));
  const known = Object.keys(sources.value as object);
  const uncited = name === HOME ? [] : known.filter((one) => !Object.hasOwn(region.sources, one));
  const unknown = Object.keys(region.sources).filter((one) => !known.includes(one));
  return [
    ...words,
    ...unused.map((phrase) =>
      fileProblem(file, file.keyAt([name, 'say', phrase]), { code: 'region-phrase', phrase }),
    ),
    ...uncited.map((key) =>
      fileProblem(file, file.keyAt([name, 'sources']), {
        ...{ code: 'key-missing', path: `${name}.sources`, key },
      }),
    ),
    ...unknown.map((one) =>
      fileProblem(file, file.keyAt([name, 'sources', one]), {
        ...{ code: 'name-unknown', name: one, among: 'sources.json' },
      }),
    ),
  ];
}

/** What the firm itself says that is not of its region: numbers, languages. */
function ofFirm(
  text: Text,
  firm: Firm,
  regions: Readonly<Record<string, Region>>,
): readonly Problem[] {
  const region = regions[firm.region];
  if (!region) {
    const among = `regions.yaml, which has ${Object.keys(regions).join(', ')}`;
    return [nameUnknown(text, ['region'], firm.region, among)];
  }
  const { dial } = firm.numbers.emergency;
  const strange = firm.region === HOME ? [] : firm.languages.filter((one) => one !== SOURCE);
  return [
    ...(region.emergency.includes(dial)
      ? []
      : [
          fileProblem(text, text.valueAt(['numbers', 'emergency', 'dial']), {
            ...{ code: 'region-emergency', region: firm.region, numbers: region.emergency },
          }),
        ]),
    ...sentencesIn(text.value).flatMap(([path, said]) => {
      const found = left(region, said);
      if (found === undefined || path[0] === 'region') return [];
      return [
        fileProblem(text, text.valueAt(path), { code: 'region-word', region: firm.region, found }),
      ];
    }),
    ...strange.map((language) =>
      fileProblem(text, text.valueAt(['languages', firm.languages.indexOf(language)]), {
        ...{ code: 'region-language', region: firm.region, language },
      }),
    ),
  ];
}

/**
 * Every region, whichever the firm is in, says all that depends on the region in words of its own,
 * and cites sources of its own; the firm's numbers and languages are of its region.
 */
export function regionProblems(content: Content): readonly Problem[] {
  const [regions, guides, names] = [
    content.regions(),
    content.wholeGuides(),
    textsOf(content, SOURCE),
  ];
  const file = content.text('regions.yaml');
  const sources = content.text('sources.json');
  if (!regions.ok || !guides.ok || !names.ok || !file.ok || !sources.ok) return [];
  const files = [...names.value, BLOCKS, ...guides.value.map(({ id }) => id)];
  const texts = all<Text[]>(...files.map((name) => content.text(`text/${SOURCE}/${name}.json`)));
  if (!texts.ok) return [];
  const [own, firm] = [content.text('firm.yaml'), content.firm()];
  return [
    ...Object.entries(regions.value).flatMap((region) =>
      ofRegion(region, file.value, texts.value, sources.value),
    ),
    ...(own.ok && firm.ok ? ofFirm(own.value, firm.value, regions.value) : []),
  ];
}
