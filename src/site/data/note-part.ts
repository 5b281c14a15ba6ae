import type { Guide } from '../../guide/types.ts';
import { freeze } from '../../note/freeze.ts';
import { partOfRelease } from '../../note/part-of-release.ts';
import { askTable } from '../../diagnosis/ask-table.ts';
import { defined } from '../../defined.ts';
import { eachOnce } from '../../once.ts';
import { details, guides, models, releases } from '../../content/load.ts';
import { makeCalls } from './phone-links.ts';
import type { NotePart } from '../../app/note/part.ts';
import { namespaceText } from '../words.ts';
import { guideTexts, withHandOvers } from './texts.ts';

/** The same in all languages, and some work to make. */
const askOf = eachOnce((guide: Guide) => {
  const model = models()[guide.id];
  const names = details().map(({ id }) => id);
  return model && askTable(model, guide, names);
});

/** What the note page loads for a guide. */
export function notePart(language: string, guide: Guide): NotePart {
  // The one that codes are written in now.
  const written = releases().at(-1);
  const frozen = written?.guides.some(({ id }) => id === guide.id) ?? false;
  const release =
    written && frozen
      ? written
      : // Never in a code: only to follow the journey by.
        freeze(guides(), details(), (written?.release ?? 0) + 1, '1970-01-01');
  const { names } = namespaceText(language, 'guides') as { names: Record<string, string> };
  return {
    guide: guide.id,
    release: partOfRelease(release, guide.id),
    frozen,
    texts: {
      ...guideTexts(language, guide, ['title', 'answers', 'now']),
      guides: { names: Object.fromEntries(withHandOvers(guide).map((id) => [id, names[id]])) },
    },
    calls: makeCalls(language, guide),
    ...defined({ ask: askOf(guide) }),
  };
}
