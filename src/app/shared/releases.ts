/** Every release ever published, as frozen. */
import type { Release } from '../../note/release.ts';

const files = import.meta.glob<Release>('../../../content/releases/*.json', {
  eager: true,
  import: 'default',
});

export const releases: readonly Release[] = Object.values(files);
