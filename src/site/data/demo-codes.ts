/** The page's demo codes, written at build time as any note's are. */
import type { Demo } from '../../content/schema/demo.ts';
import { dayOf } from '../../note/day.ts';
import { makeLibrary, newestRelease } from '../../note/library.ts';
import type { Note } from '../../note/types.ts';
import { writeCode } from '../../note/write.ts';
import { releases } from '../../app/shared/releases.ts';

/** A demo that the newest release cannot write ends the build. */
export function demoCodes(demos: readonly Demo[]): { id: string; code: string }[] {
  const library = makeLibrary(releases);
  return demos.map(({ id, guide, answers, error, details, made }) => {
    const note = {
      release: newestRelease(library) ?? 0,
      guide,
      journey: answers.map(([at, answer]) => ({ at, answer })),
      day: dayOf(new Date(`${made}T00:00:00Z`)),
      details,
      error,
    } as unknown as Note; // Names are checked by the writing itself.
    const written = writeCode(note, library);
    if (!written.ok)
      throw new Error(`content/demo.json: "${id}" is broken: ${JSON.stringify(written.error)}`);
    return { id, code: written.value };
  });
}
