import { content, firm, languageOf, mainLanguage } from '../../content/load.ts';
import { SOURCE } from '../../content/texts.ts';

const BLOCKS =
  'article|body|d[dlt]|details|div|fig\\w+|footer|h\\d|head|header|html|li|link|main|meta|nav|[ou]l|p|section|summary|t[dhr]|table|tbody|thead|title';
const BESIDE_BLOCKS = new RegExp(
  `\\s+(?=</?(?:${BLOCKS})\\b)|(?<=</?(?:${BLOCKS})\\b[^>]*>)\\s+`,
  'g',
);
/** What holds no text of the page's language, then a tag with the text behind it. */
const PARTS = /<(script|style|svg|title|option|textarea)\b.*?<\/\1>|(<[^>]*>)([^<]+)/gs;
/** Their text would become several boxes in a row. */
const IN_A_ROW = /^<(?:a|h\d|summary|button)\b/;

/** A page without the spaces that no browser shows. */
export const tight = (page: string): string => page.replace(BESIDE_BLOCKS, '');

/** What no line parts while it fits one: “est-il” in a title, a telephone number. */
const HYPHENED = /[\p{L}’-]+-\p{L}+/gu;
const NUMBER = /\u2066?\(\d{3}\)\s\d{3}-\d{4}\u2069?/g;
const WHOLE = '<span class="whole">$&</span>';

/** Words on a range that are words of another language, too: only where they can be no other. */
const ONLY: Readonly<Record<string, string>> = {
  On: '(?<=\\p{L} )On',
  Control: 'Control(?= Lock)',
  Poison: 'Poison(?= Help)',
  calibration: '(?<=“)calibration',
};

/** A pattern of what is English in a language's sentences, all of it one group; none for English. */
export function englishIn(language: string): string | undefined {
  if (language === SOURCE) return undefined;
  // Beside Arabic letters all Latin ones are English; no part of a name of a character.
  if (languageOf(language).direction === 'rtl')
    return "((?<![&#\\w])[A-Za-z][\\w.@’'-]*(?:(?: |&amp;)+[A-Za-z][\\w.@’'-]*)*(?<![.'-]))";
  const own = content().ownWords();
  const panel = own.ok ? (own.value['panel'] ?? []) : [];
  const { name, 'short-name': short = name } = firm();
  const names = mainLanguage() === SOURCE ? [name, short] : [];
  const one = [...names, ...panel].map((word) => ONLY[word] ?? word).join('|');
  return `(?<![\\p{L}’'-])((?:${one})(?: (?:${one}))*)(?![\\p{L}’'-])`;
}

/**
 * A page in which what is English says so, for voices (WCAG 2.2, 3.1.2): what stands on a range, and
 * names. Of what scripts write, desk and preview mark the guide's sentences (`app/shared/marked.tsx`).
 */
export function markEnglish(language: string): (page: string) => string {
  const pattern = englishIn(language);
  if (pattern === undefined) return (page) => page;
  const found = new RegExp(pattern, 'gu');
  return (page) =>
    page.replace(PARTS, (whole: string, _: unknown, tag?: string, text?: string) => {
      if (tag === undefined || text === undefined || tag.includes(' lang=')) return whole;
      const spoken = text.replace(found, `<bdi lang="${SOURCE}">$&</bdi>`);
      const marked = spoken.replace(tag.startsWith('<h1') ? HYPHENED : NUMBER, WHOLE);
      return tag + (marked !== text && IN_A_ROW.test(tag) ? `<span>${marked}</span>` : marked);
    });
}
