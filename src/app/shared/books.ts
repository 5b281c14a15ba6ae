/** Every codebook ever published, bundled with the page, marked with what the page carries. */
import type { Marks } from '../../guide/marks.ts';
import { makeLibrary, type Library } from '../../note/library.ts';
import { embedded } from './embedded.ts';
import { releases } from './releases.ts';

export const library: Library = makeLibrary(releases, embedded('marks') as Marks);
