import { reached } from './property.ts';
import type { Failure, Property } from './property.ts';
import { missingKeys, pageGrade } from './sentences.ts';

/** School years a reader needs at most. */
const MOST_GRADE = 6;

/** Every page has all its sentences, and they read at grade 6 or lower. */
export const sentencesPlain: Property = {
  id: 'sentences-plain',
  concerns: () => true,
  needsText: true,
  check: ({ graph, searches, text }) => {
    if (!text) return [];
    return reached(graph).flatMap(({ node, index }): Failure[] => {
      const journey = () => searches.plain(index);
      const sentences = text.sentences[node.sentences];
      const grade = sentences ? pageGrade(sentences, text.grade) : 0;
      const missing = missingKeys(node, sentences).map((key): Failure => ({
        fault: { code: 'sentence-missing', node: node.id, key: `${node.sentences}.${key}` },
        journey,
      }));
      if (grade <= MOST_GRADE) return missing;
      return [
        ...missing,
        { fault: { code: 'too-hard', node: node.id, grade, most: MOST_GRADE }, journey },
      ];
    });
  },
};
