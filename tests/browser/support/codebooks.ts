import { releases } from '../../../src/content/load.ts';
import { makeCodebooks } from '../../../src/note/codebook.ts';

/** The books of every release, as the site carries them. */
export const codebooks = makeCodebooks(releases());
/** The release that new notes are written with. */
export const newest = releases().length;
