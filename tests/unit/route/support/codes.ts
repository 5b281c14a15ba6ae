import type { CurrentCodebooks } from '../../../../src/content/codebooks.ts';
import { flags, releases } from '../../../../src/content/load.ts';
import { makeCodebooks } from '../../../../src/note/codebook.ts';
import { sampleJourneys } from '../../../../src/note/sample.ts';
import { alphabet } from '../../../../src/note/symbols.ts';
import { writeCode } from '../../../../src/note/write.ts';

/** The books as published. */
export function publishedCodebooks(): CurrentCodebooks {
  return {
    codebooks: makeCodebooks(releases(), flags()),
    newest: releases().length,
    draft: false,
  };
}

/** `size` codes of the newest release, of all its guides in turn, the same ones every time. */
export function sampleCodes(
  { codebooks, newest }: CurrentCodebooks,
  size: number,
  seed = 1,
): string[] {
  const guides = codebooks.get(newest)?.guides ?? [];
  const lists = guides.map((guide) =>
    [...sampleJourneys(guide, Math.ceil(size / guides.length), seed)].map((journey) => {
      const note = { release: newest, guide: guide.id, journey, day: 3, details: {}, error: '' };
      const code = writeCode(note, codebooks);
      if (!code.ok) throw new Error(JSON.stringify(code.error));
      return code.value;
    }),
  );
  return Array.from(
    { length: size },
    (_, index) => lists[index % lists.length]?.[Math.floor(index / lists.length)] ?? '',
  );
}

/** The code with the sign at some places (hyphens counted) made the next one of the alphabet. */
export function damaged(code: string, ...places: readonly number[]): string {
  return [...code]
    .map((sign, at) =>
      places.includes(at) ? (alphabet[(alphabet.indexOf(sign) + 1) % alphabet.length] ?? '') : sign,
    )
    .join('');
}
