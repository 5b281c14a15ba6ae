import type { Codebook } from '../../note/codebook.ts';

/** All codebooks, empty until `add` has loaded them, with the first code: they weigh as much as a page. */
export function makeLateBooks() {
  const codebooks = new Map<number, Codebook>();
  let adding: Promise<void> | undefined;
  const addBooks = (): Promise<void> =>
    (adding ??= import('./books.ts').then(
      ({ codebooks: all }) => {
        for (const [release, codebook] of all) codebooks.set(release, codebook);
      },
      (problem: unknown) => {
        adding = undefined;
        throw problem;
      },
    ));
  return { codebooks, addBooks };
}
