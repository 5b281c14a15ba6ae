import i18next from 'i18next';
import type { i18n, TFunction } from 'i18next';
import { split } from '../guide/ids.ts';
import type { Guide, TextId } from '../guide/types.ts';
import { firm, guides, guideTextFile, models, textFile } from './content.ts';
import type { Firm } from './firm.ts';
import type { NodeText } from './guide-text.ts';
import { languageOf } from './languages.ts';

/** Text files of homeowners' pages, besides those of the guides. */
export const ownerTexts = [
  'site',
  'about',
  'note',
  'errors',
  'offline',
  'care',
  'guides',
  'fetching',
] as const;
/** Text files of pages for staff; languages that only homeowners' pages speak have none. */
export const staffTexts = ['preview', 'visits', 'bench', 'diagnosis', 'desk'] as const;
/** Text files that belong to no guide. */
export const namespaces = [...ownerTexts, ...staffTexts] as const;

/** `t` over all namespaces, `site` the default; an unknown key does not compile. */
export type Words = TFunction<typeof namespaces>;

/** The text file of a guide's own faults, checks and reasons. */
export function faultTexts(guide: string): string {
  return `${guide}.faults`;
}

/** The text files of a language that do not follow a guide's pages. */
export function textsOf(language: string): readonly string[] {
  const { staff } = languageOf(language);
  return staff ? [...namespaces, ...Object.keys(models()).map(faultTexts)] : ownerTexts;
}

/** What the firm says of itself in a language: said once for all, or in each language. */
function toldIn(language: string, told: Firm['hours']): string {
  const text = typeof told === 'string' ? told : told[language];
  if (text === undefined)
    throw new Error(`content/firm.yaml lacks "${language}" among its hours or its area.`);
  return text;
}

function missing(key: string): never {
  throw new Error(`No sentence for "${key}". Add it to content/text in every language.`);
}

/** What every sentence may name about the firm. */
function firmFacts(language: string): Record<string, string> {
  const { name, phone, hours, area, numbers } = firm();
  // A number that breaks over two lines is hard to dial.
  const whole = (text: string): string => text.replaceAll(' ', '\u00a0');
  return {
    firm: name,
    phone: whole(phone.show),
    hours: toldIn(language, hours),
    area: toldIn(language, area),
    emergency: numbers.emergency.show,
    poison: numbers.poison.show,
  };
}

const started = new Map<string, i18n>();

function engine(language: string): i18n {
  const known = started.get(language);
  if (known) return known;
  const resources: Record<string, Record<string, unknown>> = {};
  for (const name of textsOf(language))
    resources[name] = textFile(language, name) as Record<string, unknown>;
  for (const guide of guides()) resources[guide.id] = guideTextFile(language, guide);
  const made = i18next.createInstance({
    lng: language,
    fallbackLng: false,
    ns: Object.keys(resources),
    defaultNS: 'site',
    resources: { [language]: resources },
    initAsync: false,
    // Astro and Solid escape; twice would show entities.
    interpolation: { escapeValue: false, defaultVariables: firmFacts(language) },
    parseMissingKeyHandler: missing,
    missingInterpolationHandler: (text: string) => missing(text),
    returnObjects: true,
  });
  void made.init();
  started.set(language, made);
  return made;
}

/** `t` of a language, with the firm's facts filled in; a missing key or fact throws. */
export function words(language: string): Words {
  return engine(language).t;
}

/** The sentences of a node, the firm's facts filled in. */
export function nodeText(language: string, guide: Guide, text: TextId): NodeText {
  // A guide's keys come from its graph, not from a file the compiler knows.
  const t = engine(language).t as unknown as (key: string, options: object) => unknown;
  const { guide: other = guide.id, name } = split(text);
  return t(`${other}:${name}`, { returnObjects: true }) as NodeText;
}

/** All sentences of a namespace with the firm's facts filled in, other placeholders kept. */
export function namespaceText(language: string, name: string): Record<string, unknown> {
  const facts = firmFacts(language);
  const fill = (value: unknown): unknown => {
    if (typeof value === 'string')
      return value.replace(/\{\{(\w+)\}\}/g, (whole, key: string) => facts[key] ?? whole);
    if (Array.isArray(value)) return value.map(fill);
    return Object.fromEntries(
      Object.entries(value as Record<string, unknown>).map(([key, inner]) => [key, fill(inner)]),
    );
  };
  return fill(engine(language).getResourceBundle(language, name)) as Record<string, unknown>;
}
