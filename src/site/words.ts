import i18next from 'i18next';
import type { i18n, TFunction } from 'i18next';
import { split } from '../guide/ids.ts';
import type { Guide, TextId } from '../guide/types.ts';
import { firm, guides, guideText, languageOf, textFile, textsOf } from '../content/load.ts';
import type { Firm } from '../content/schema/firm.ts';
import type { NodeText } from '../content/schema/guide-text.ts';
import type { namespaces } from '../content/texts.ts';

/** `t` over all namespaces, `site` the default; an unknown key does not compile. */
export type Words = TFunction<typeof namespaces>;

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
  // A number that breaks over two lines is hard to dial; in a sentence from right to left its
  // groups would change places unless it is set apart (Unicode UAX 9, LRI … PDI).
  const rtl = languageOf(language).direction === 'rtl';
  const whole = (text: string): string => {
    const unbroken = text.replaceAll(' ', '\u00a0');
    return rtl ? `\u2066${unbroken}\u2069` : unbroken;
  };
  return {
    firm: name,
    phone: whole(phone.show),
    hours: toldIn(language, hours),
    area: toldIn(language, area),
    emergency: whole(numbers.emergency.show),
    poison: whole(numbers.poison.show),
  };
}

const started = new Map<string, i18n>();

function engine(language: string): i18n {
  const known = started.get(language);
  if (known) return known;
  const resources: Record<string, Record<string, unknown>> = {};
  for (const name of textsOf(language)) resources[name] = textFile(language, name);
  for (const guide of guides()) resources[guide.id] = guideText(language, guide);
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
