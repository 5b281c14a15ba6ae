/** Sentences at a terminal: the English ones of this copy's content, as a page of staff has them. */
import { makeWords } from '../app/shared/words.ts';
import { guides, guideText, textFile } from '../content/load.ts';
import { MODEL, SOURCE, staffTexts } from '../content/texts.ts';

/** Of a guide's pages what staff read. */
const staffPart = (texts: ReturnType<typeof guideText>) =>
  Object.fromEntries(
    Object.entries(texts).map(([node, { short, answers }]) => [node, { short, answers }]),
  );

export const staffWords = () =>
  makeWords({
    language: SOURCE,
    texts: {
      ...Object.fromEntries(
        [...staffTexts, 'guides', MODEL].map((name) => [name, textFile(SOURCE, name)]),
      ),
      ...Object.fromEntries(
        guides().map((guide) => [guide.id, staffPart(guideText(SOURCE, guide))]),
      ),
    },
  });
