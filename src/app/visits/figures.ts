/** What the list of visits needs of a guide: its figures, and its words. */
import type { Model } from '../../diagnosis/types.ts';
import { fail, ok, type Result } from '../../result.ts';
import { fetchData } from '../shared/fetched.ts';
import { pageWords, type Words } from '../shared/words.ts';
import type { Page, PreviewPart } from '../preview/page.ts';
import type { ImportProblem } from './stored.ts';

export interface GuideFigures {
  readonly model: Model;
  readonly words: Words;
}

/** Fetch a guide's figures; the browser or the worker has kept those seen before. */
export async function figuresOf(
  { files }: Pick<Page, 'files'>,
  guide: string,
): Promise<Result<GuideFigures, ImportProblem>> {
  const file = Object.hasOwn(files, guide) ? files[guide] : undefined;
  if (file === undefined) return fail({ code: 'other-guide', guide });
  const data = await fetchData(file);
  if (!data.ok) return fail({ code: 'figures-missing' });
  const { models, texts } = data.value as PreviewPart;
  const model = models[guide];
  if (!model) return fail({ code: 'other-guide', guide });
  return ok({ model, words: pageWords(texts) });
}
