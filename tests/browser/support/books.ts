import { loadReleases } from '../../../src/cli/books.ts';
import { makeLibrary } from '../../../src/note/library.ts';

const releases = loadReleases();
if (!releases.ok) throw new Error(JSON.stringify(releases.error));

/** The books of every release, as the site carries them. */
export const library = makeLibrary(releases.value);
/** The release that new notes are written with. */
export const newest = releases.value.length;
