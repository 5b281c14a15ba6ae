import type { Guide } from '../../guide/types.ts';
import { models, staffViews } from '../../content/load.ts';
import { faultTexts } from '../../content/texts.ts';
import { namespaceText } from '../words.ts';
import type { PreviewPart } from '../../app/preview/page.ts';
import { guideTexts, withHandOvers } from './texts.ts';

/** Of a record by guide what belongs to some guides. */
function only<T>(all: Readonly<Record<string, T>>, ids: readonly string[]): Record<string, T> {
  return Object.fromEntries(Object.entries(all).filter(([id]) => ids.includes(id)));
}

/** What the preview loads for a guide. */
export function previewPart(language: string, guide: Guide): PreviewPart {
  const ids = withHandOvers(guide);
  const known = only(models(), ids);
  const faults = Object.keys(known).map((id) => [
    faultTexts(id),
    namespaceText(language, faultTexts(id)),
  ]);
  const { names } = namespaceText(language, 'guides') as { names: Record<string, string> };
  return {
    models: known,
    staffViews: only(staffViews(), ids),
    texts: {
      ...guideTexts(language, guide, ['short', 'answers']),
      ...(Object.fromEntries(faults) as Record<string, unknown>),
      guides: { names: only(names, ids) },
    },
  };
}
