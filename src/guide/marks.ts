/**
 * What today's guides make of an answer or an end, by guide and page: codebooks froze only the
 * structure, and old codes are seen as today's software sees a new one.
 */
import { ownNodes } from './ids.ts';
import type { Answer, Guide, GuideNode } from './types.ts';

export type AnswerMarks = Partial<Pick<Answer, 'sets' | 'clears' | 'flag' | 'heatEnded'>>;

export interface PageMarks {
  readonly heat?: true;
  readonly flag?: string;
  readonly answers?: Readonly<Record<string, AnswerMarks>>;
}

export interface GuideMarks {
  readonly tracks: readonly string[];
  /** Pages with a mark, and those whose own name looks like a copy's on a track. */
  readonly pages: Readonly<Record<string, PageMarks>>;
}

export interface Marks {
  /** All flags, in the order staff see them. */
  readonly flags: readonly string[];
  readonly guides: Readonly<Record<string, GuideMarks>>;
}

function answerMarks({ sets, clears, flag, heatEnded }: Answer): AnswerMarks {
  return {
    ...(sets.length > 0 ? { sets } : {}),
    ...(clears.length > 0 ? { clears } : {}),
    ...(flag === undefined ? {} : { flag }),
    ...(heatEnded === undefined ? {} : { heatEnded }),
  };
}

function pageMarks({ heat, flag, answers }: GuideNode): PageMarks {
  const marked = answers
    .map((answer) => [answer.id, answerMarks(answer)] as const)
    .filter(([, marks]) => Object.keys(marks).length > 0);
  return {
    ...(heat ? { heat } : {}),
    ...(flag === undefined ? {} : { flag }),
    ...(marked.length > 0 ? { answers: Object.fromEntries(marked) } : {}),
  };
}

function guideMarks(guide: Guide): GuideMarks {
  const { tracks } = guide;
  const pages = ownNodes(guide).map((node) => [node.page, pageMarks(node)] as const);
  const told = pages.filter(
    ([page, marks]) =>
      Object.keys(marks).length > 0 || tracks.some((track) => page.endsWith(`-${track}`)),
  );
  return { tracks, pages: Object.fromEntries(told) };
}

/** The marks of all guides of a copy. */
export function marksOf(guides: readonly Guide[]): Marks {
  return {
    flags: guides[0]?.flags ?? [],
    guides: Object.fromEntries(guides.map((guide) => [guide.id, guideMarks(guide)])),
  };
}
