import { basename } from 'node:path';
import { buildModel } from '../../diagnosis/build-model.ts';
import { selectionOf } from '../../diagnosis/selection.ts';
import { loadFigures } from '../../diagnosis/load.ts';
import { details, guides, modelFiles, wholeGuides } from '../../content/load.ts';
import { once } from '../../once.ts';
import { namesOf } from '../../content/model-names.ts';
import type { LearnPart } from '../../app/learn/page.ts';

/** The figures, and which calls become visits by them: the same in every language, and some work. */
const learned = once(() => {
  const sources = modelFiles().map(({ file, source }) => ({ file: basename(file), source }));
  const read = loadFigures(sources, { guides: wholeGuides(), details: details() });
  // The gates have read them before.
  if (!read.ok) throw new Error('content/model');
  return { model: read.value, selection: selectionOf(buildModel(read.value), guides()), sources };
});

/** What the learning page loads: the figures, which calls become visits by them, and their words. */
export function learnPart(language: string): LearnPart {
  const figures = learned();
  const names = namesOf(guides(), language);
  return {
    ...figures,
    faults: Object.fromEntries(
      Object.keys(figures.model.faults).map((id) => [id, names.fault(id)]),
    ),
    questions: Object.fromEntries(
      Object.entries(figures.model.observations).map(([key, { answers }]) => [
        key,
        {
          title: names.question(key),
          answers: Object.fromEntries(answers.map((answer) => [answer, names.answer(key, answer)])),
        },
      ]),
    ),
  };
}
