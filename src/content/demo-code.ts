import { dayOf } from '../note/day.ts';
import { newestRelease } from '../note/codebook.ts';
import type { Codebooks } from '../note/codebook.ts';
import type { Note } from '../note/types.ts';
import { writeCode } from '../note/write.ts';
import type { Demo } from './schema/demo.ts';

/** The code of a made-up visit by the newest release, written as any note's is. */
export function demoCode(demo: Demo, codebooks: Codebooks): ReturnType<typeof writeCode> {
  const { guide, answers, error, details, made } = demo;
  const note = {
    release: newestRelease(codebooks) ?? 0,
    guide,
    journey: answers.map(([at, answer]) => ({ at, answer })),
    day: dayOf(new Date(`${made}T00:00:00Z`)),
    details,
    error,
  } as unknown as Note; // Names are checked by the writing itself.
  return writeCode(note, codebooks);
}
