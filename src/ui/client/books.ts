/** Every note book ever published, bundled with the page. */
import { makeLibrary, type Library } from '../../note/library.ts';
import type { Release } from '../../note/release.ts';

const releases = import.meta.glob<Release>('../../../content/releases/*.json', {
  eager: true,
  import: 'default',
});

export const library: Library = makeLibrary(Object.values(releases));
