import i18next, { type i18n } from 'i18next';
import type { Words } from '../app/shared/words.ts';
import { parseId } from '../guide/ids.ts';
import type { Guide, TextId } from '../guide/types.ts';
import {
  firm,
  guides,
  guideText,
  languageOf,
  localeOf,
  region,
  textFile,
  textsOf,
} from '../content/load.ts';
import { regional, regionalSentence } from '../content/regions.ts';
import { SOURCE } from '../content/texts.ts';
import type { Told } from '../content/schema/firm.ts';
import { deskText, type NodeText } from '../content/schema/guide-text.ts';
import { eachOnce } from '../once.ts';
import { fill, type Facts } from '../placeholders.ts';

/** What the firm says of itself in a language: said once for all, or in each language. */
export function toldIn(language: string, told: Told): string {
  const text = typeof told === 'string' ? told : told[language];
  if (text === undefined)
    throw new Error(`content/firm.yaml lacks "${language}" among its sentences.`);
  return text;
}

function missing(key: string): never {
  throw new Error(`No sentence for "${key}". Add it to content/text in every language.`);
}

/**
 * A telephone number as a sentence shows it. One that breaks over two lines is hard to dial; from
 * right to left its groups would change places unless it is set apart (Unicode UAX 9, LRI … PDI).
 */
export function numberIn(language: string, shown: string): string {
  const unbroken = shown.replaceAll(' ', '\u00a0');
  return languageOf(language).direction === 'rtl' ? `\u2066${unbroken}\u2069` : unbroken;
}

/** What every sentence may name about the firm. */
function firmFacts(language: string): Facts {
  const { name, phone, area, numbers } = firm();
  const whole = (text: string) => numberIn(language, text);
  return {
    firm: name,
    short: firm()['short-name'] ?? name,
    phone: whole(phone.show),
    area: toldIn(language, area),
    emergency: whole(numbers.emergency.show),
    poison: whole(numbers.poison.show),
  };
}

/** Sentences with the firm's facts filled in; what a page says later stays open. */
function filled(value: unknown, facts: Facts): unknown {
  if (typeof value === 'string') return fill(value, facts, (name) => `{{${name}}}`);
  if (Array.isArray(value)) return value.map((inner) => filled(inner, facts));
  return Object.fromEntries(
    Object.entries(value as Record<string, unknown>).map(([key, inner]) => [
      key,
      filled(inner, facts),
    ]),
  );
}

/** Under which name a guide's sentences stand as the desk says them. */
export const deskNamespace = (guide: string): string => `desk/${guide}`;

const engine = eachOnce((language: string): i18n => {
  const facts = firmFacts(language);
  const resources: Record<string, object> = {};
  const own = region();
  const sentence = regionalSentence(own);
  const told = (texts: unknown, known: Facts) =>
    filled(language === SOURCE ? regional(texts, own, sentence) : texts, known) as object;
  const put = (name: string, texts: unknown) => (resources[name] = told(texts, facts));
  for (const name of textsOf(language)) put(name, textFile(language, name));
  for (const guide of guides()) put(guide.id, guideText(language, guide));
  const made = i18next.createInstance({
    lng: language,
    fallbackLng: false,
    ns: Object.keys(resources),
    resources: { [language]: resources },
    initAsync: false,
    parseMissingKeyHandler: missing,
  });
  void made.init();
  if (textsOf(language).includes('desk')) {
    const spoken = { ...facts, firm: made.t('desk:end.us'), book: made.t('desk:end.book') };
    for (const guide of guides()) {
      const english = guideText(SOURCE, guide);
      const said = Object.entries(guideText(language, guide)).map(([page, text]) => [
        page,
        deskText(text, english[page] ?? text),
      ]);
      const texts = told(Object.fromEntries(said), spoken);
      made.addResourceBundle(language, deskNamespace(guide.id), texts);
    }
  }
  return made;
});

/**
 * A language's words, the firm's facts filled in; a missing key or fact throws. i18next finds the
 * sentence and its counted form; facts are put in as in the browser.
 */
export function words(language: string): Words {
  const found = engine(language);
  return {
    language: localeOf(language),
    t: (key, facts = {}) =>
      fill(found.t(key, { ...facts, skipInterpolation: true }), facts, (name) =>
        missing(`${key} {{${name}}}`),
      ),
    list: (key) => found.t(key, { returnObjects: true, skipInterpolation: true }) as string[],
    // At build time a name without words ends the build.
    content: (namespace, ...path) =>
      (found.getResource(language, namespace, path.join('.')) as unknown) ??
      missing(`${namespace}:${path.join('.')}`),
  };
}

/** The sentences of a node, the firm's facts filled in. */
export function nodeText(language: string, guide: Guide, text: TextId): NodeText {
  const { guide: other = guide.id, name } = parseId(text);
  return namespaceText(language, other)[name] as NodeText;
}

/** All sentences of a namespace with the firm's facts filled in, other placeholders kept. */
export function namespaceText(language: string, name: string): Record<string, unknown> {
  return engine(language).getResourceBundle(language, name) as Record<string, unknown>;
}
