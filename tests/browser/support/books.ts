import { releases } from '../../../src/content/load.ts';
import { makeLibrary } from '../../../src/note/library.ts';

/** The books of every release, as the site carries them. */
export const library = makeLibrary(releases());
/** The release that new notes are written with. */
export const newest = releases().length;
