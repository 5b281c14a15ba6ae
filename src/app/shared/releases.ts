/** Every release ever published, with what the first of them did not freeze. */
import retired from '../../../content/retired.json';
import type { Release } from '../../note/release.ts';
import { completed } from '../../note/retired.ts';
import type { Retired } from '../../note/retired.ts';

const files = import.meta.glob<Release>('../../../content/releases/*.json', {
  eager: true,
  import: 'default',
});

export const releases: readonly Release[] = Object.values(files).map((release) =>
  completed(release, retired as Retired),
);
