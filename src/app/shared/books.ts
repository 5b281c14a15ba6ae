/** Every note book ever published, bundled with the page. */
import { makeLibrary, type Library } from '../../note/library.ts';
import { releases } from './releases.ts';

export const library: Library = makeLibrary(releases);
