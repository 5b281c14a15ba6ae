/**
 * The content of this copy, each part as a value. Broken content ends whoever asks, with every
 * problem named: file, line, what is wrong and what to do.
 */
import { fileURLToPath } from 'node:url';
import { isRecord } from '../guide/shape.ts';
import type { Guide } from '../guide/types.ts';
import { makeCodebooks } from '../note/codebook.ts';
import { eachOnce } from '../once.ts';
import { openContent } from './content.ts';
import type { Content, Checked } from './content.ts';
import { demoCode } from './demo-code.ts';
import { languageReport, readTexts, textsOf as namesOfTexts } from './language-report.ts';
import { guideVersion } from './reviews.ts';
import { regionalSources } from './regions.ts';
import type { Language } from './schema/languages.ts';
import { HOME } from './schema/regions.ts';
import type { Region } from './schema/regions.ts';
import type { NodeText } from './schema/guide-text.ts';
import { tellProblems } from './tell.ts';
import { filledIn } from '../text/translation.ts';
import { BLOCKS, SOURCE, alone, joinedText } from './texts.ts';

/**
 * The folder of this copy's content: `content` beside `src`, or what `CONTENT_DIR` names. The
 * build always sets `CONTENT_DIR`, because what it bundles no longer knows where `src` was.
 */
export function content(): Content {
  const named = process.env['CONTENT_DIR'];
  return openContent(named ?? fileURLToPath(new URL('../../content/', import.meta.url)));
}

/** Its message says all that its reader needs; a stack would only hide that. */
export class ContentError extends Error {}

/** The one place where problems of content become an exception. */
function need<T>(part: Checked<T>): T {
  if (part.ok) return part.value;
  throw new ContentError(tellProblems(part.error));
}

/** Who runs this copy. */
export const firm = () => need(content().firm());
/** What the firm's region says instead. */
export function region(): Region {
  const { region: name } = firm();
  const found = need(content().regions())[name];
  if (!found) throw new Error(`content/regions.yaml has no "${name}".`);
  return found;
}
/** All guides, in the order of their folder names. */
export const guides = () => need(content().guides());
/** The same with all that firms may switch off: what old codes may tell of. */
export const wholeGuides = () => need(content().wholeGuides());
/** The optional details, in the order of the note code. */
export const details = () => need(content().details());
/** The figures of the evidence model as their files have them. */
export const modelFiles = () => need(content().modelFiles());
/** The evidence model of the whole range. */
export const model = () => need(content().model());
/** Guide → the cut of the model that its journeys need. */
export const models = () => need(content().models());
/** Guide → how a technician sees it, for the guides that say so. */
export const staffViews = () => need(content().staffViews());
/** What owners say and which guide it leads to. */
export const finder = () => need(content().finder());
/** The care pages, in the order shown. */
export const carePages = () => need(content().carePages());
/** The published sources: short name → how it is cited. */
export const sources = () => regionalSources(need(content().sources()), region());
/** Who signed which version of a guide, the newest last. */
export const reviews = () => need(content().reviews());
/** The hazard log: a hazard's name → what it is, what controls it, and what shows that. */
export const hazards = () => need(content().hazards());
/** What the last runs found that the safety case tells of. */
export const safety = () => need(content().safety());
/** What is met of WCAG 2.2, by the number of the criterion. */
export const wcag = () => need(content().wcag());
/** The tasks of the study with people. */
export const study = () => need(content().study());
/** The safety flags, in the order staff see them. */
export const flags = () => need(content().flags());
/** What copies kept on devices must not show any more. */
export const recall = () => need(content().recall());
/** All frozen releases, the oldest first. */
export const releases = () => need(content().releases());

/** The codes of the made-up visits, by the newest release. */
export function demoCodes(): readonly { readonly id: string; readonly code: string }[] {
  const codebooks = makeCodebooks(releases());
  return need(content().demos()).map((demo) => {
    const code = demoCode(demo, codebooks);
    if (!code.ok) throw new Error(`content/demo.json: "${demo.id}": ${code.error.code}`);
    return { id: demo.id, code: code.value };
  });
}

/** One text file of a language: nested sentences, in English where the language has none. */
export function textFile(language: string, name: string): Readonly<Record<string, unknown>> {
  const read = (of: string) => need(readTexts(content(), of, [name])).get(name);
  const value =
    language === SOURCE ? read(SOURCE) : filledIn(read(SOURCE), read(language), language);
  return isRecord(value) ? value : {};
}

/** Whether English stands in a language's pages. */
export const isBehind = eachOnce(
  (language: string) =>
    language !== SOURCE && need(languageReport(content(), language)).behind.length > 0,
);

/** The sentences of a guide's own pages in a language, those of blocks among them. */
export function guideText(language: string, guide: Guide): Record<string, NodeText> {
  const read = (name: string) => textFile(language, name) as Record<string, NodeText>;
  return joinedText(alone(guide), read(BLOCKS), read);
}

/** The version of a guide that a reviewer signs. */
export function versionOf(guide: Guide): string {
  return guideVersion(guide, guideText(SOURCE, guide));
}

/** The same of a guide's structure alone: what the figures of a proof hang on, whatever it says. */
export function structureOf(guide: Guide): string {
  return guideVersion(guide, {});
}

/** The text files of a language that do not follow a guide's pages. */
export function textsOf(language: string): readonly string[] {
  return need(namesOfTexts(content(), language));
}

/** What is known of a language; the gates see to it that each of the firm's is known. */
export function languageOf(language: string): Language {
  const found = need(content().languages())[language];
  if (!found) throw new Error(`content/languages.yaml has no "${language}".`);
  return found;
}

/** A language and the region whose sentences they are (BCP 47), the firm's where none is told. */
export function localeOf(language: string): string {
  const { region: name } = firm();
  const own = languageOf(language).region ?? (name === HOME ? undefined : name);
  return own === undefined ? language : `${language}-${own}`;
}

/** The languages of this copy, the default one first. */
export function languages(): readonly string[] {
  return firm().languages;
}

/** The default language: its addresses have no prefix, and staff's pages always speak it. */
export function mainLanguage(): string {
  const [first] = languages();
  if (first === undefined) throw new Error('content/firm.yaml names no language.');
  return first;
}

/** The languages the staff's pages speak. */
export function staffLanguages(): readonly string[] {
  return languages().filter((language) => languageOf(language).staff);
}

/** The language the staff's pages speak to a reader of this one. */
export function staffLanguage(language: string): string {
  return languageOf(language).staff ? language : mainLanguage();
}
