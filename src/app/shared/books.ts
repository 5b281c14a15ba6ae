/** Every codebook ever published, bundled with the page, marked with what the page carries. */
import type { Marks } from '../../guide/marks.ts';
import { makeCodebooks, type Codebooks } from '../../note/codebook.ts';
import { embedded } from './embedded.ts';
import { releases } from './releases.ts';

export const codebooks: Codebooks = makeCodebooks(releases, embedded('marks') as Marks);
