/** The codebooks of this copy; the flags' order comes in the page. */
import newest from 'newest-release';
import { makeCodebooks, type Codebook } from '../../note/codebook.ts';
import { embedded } from './embedded.ts';

const flags = embedded('flags') as string[];

/** At first of the release that codes are written in now alone: most that come are its. */
export const codebooks = new Map<number, Codebook>(makeCodebooks([newest], flags));

let adding: Promise<void> | undefined;

/** Adds those of all earlier releases; where they do not come, old codes stay unknown. */
export const addEarlier = (): Promise<void> =>
  (adding ??= import('./releases.ts').then(
    ({ releases }) => {
      for (const [release, codebook] of makeCodebooks(releases, flags))
        codebooks.set(release, codebook);
    },
    () => undefined,
  ));
