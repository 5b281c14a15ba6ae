/** Every codebook ever published, bundled with the page; the flags' order comes in the page. */
import { makeCodebooks, type Codebooks } from '../../note/codebook.ts';
import { embedded } from './embedded.ts';
import { releases } from './releases.ts';

export const codebooks: Codebooks = makeCodebooks(releases, embedded('flags') as string[]);
