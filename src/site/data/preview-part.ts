import type { Guide } from '../../guide/types.ts';
import { models, staffViews } from '../../content/load.ts';
import { MODEL } from '../../content/texts.ts';
import { namespaceText } from '../words.ts';
import type { PreviewPart } from '../../app/preview/page.ts';
import { guideTexts, withHandOvers } from './texts.ts';

type Texts = Readonly<Record<string, unknown>>;

/** Of a record what stands under some names. */
function only<T>(all: Readonly<Record<string, T>>, ids: readonly string[]): Record<string, T> {
  return Object.fromEntries(Object.entries(all).filter(([id]) => ids.includes(id)));
}

/** What the preview loads for a guide. */
export function previewPart(language: string, guide: Guide): PreviewPart {
  const ids = withHandOvers(guide);
  const known = only(models(), [guide.id]);
  const words = namespaceText(language, MODEL) as Record<'faults' | 'checks', Texts>;
  const checks = Object.values(known).flatMap((model) => model.checks.map(({ id }) => id));
  const { names } = namespaceText(language, 'guides') as { names: Record<string, string> };
  return {
    models: known,
    staffViews: only(staffViews(), ids),
    texts: {
      ...guideTexts(language, guide, ['short', 'answers']),
      [MODEL]: { faults: words.faults, checks: only(words.checks, checks as readonly string[]) },
      guides: { names: only(names, ids) },
    },
  };
}
