/** The names of the figures in words. */
import { detailKey } from '../diagnosis/evidence.ts';
import { isRecord } from '../guide/shape.ts';
import type { Guide } from '../guide/types.ts';
import { textFile } from './load.ts';
import { valueAt } from './problem.ts';
import { BLOCKS, MODEL, SOURCE } from './texts.ts';

/** What the site calls things. */
export interface Names {
  readonly fault: (id: string) => string;
  /** The question under a table's key. */
  readonly question: (key: string) => string;
  readonly answer: (key: string, answer: string) => string;
}

/** The sentence at a path of nested texts, if there is one. */
function sentence(texts: unknown, ...path: readonly string[]): string | undefined {
  const found = valueAt(texts, path);
  return typeof found === 'string' ? found : undefined;
}

/** What the site calls faults, questions and answers in a language of staff; ids where it has no words. */
export function namesOf(guides: readonly Guide[], language: string = SOURCE): Names {
  const read = (file: string) => textFile(language, file);
  const [model, preview, blocks] = [read(MODEL), read('preview'), read(BLOCKS)];
  const own = new Map(guides.map(({ id }) => [id as string, read(id)]));
  /** The texts of a table's page or detail. */
  const about = (key: string): unknown => {
    const [guide = '', page] = key.split('/');
    if (page !== undefined) return own.get(guide)?.[page];
    if (key.startsWith(detailKey('')))
      return isRecord(preview['details']) && preview['details'][key.slice(detailKey('').length)];
    return blocks[key] ?? [...own.values()].map((texts) => texts[key]).find(isRecord);
  };
  return {
    fault: (id) => sentence(model, 'faults', id, 'name') ?? id,
    question: (key) => sentence(about(key), 'title') ?? sentence(about(key), 'name') ?? key,
    answer: (key, answer) => sentence(about(key), 'answers', answer) ?? answer,
  };
}
