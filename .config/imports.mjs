// Who may import whom. Each room of `src` names the rooms it reads; all others are closed to it.
// Files of `src` itself are open to all, and pure.
const PURE = {
  physics: [],
  guide: ['physics'],
  address: ['guide'],
  journey: ['guide'],
  proof: ['guide'],
  note: ['guide', 'journey'],
  diagnosis: ['guide', 'note'],
  visit: ['guide', 'note', 'journey', 'address', 'diagnosis', 'physics'],
  route: ['guide', 'note', 'journey', 'address', 'diagnosis', 'physics', 'visit'],
};
const pure = Object.keys(PURE);

/** @type {Record<string, string[]>} */
const READS = {
  ...PURE,
  text: ['proof', 'guide'],
  content: [...pure, 'text'],
  offline: [],
  // What only the browser runs knows no file: what it needs comes in the page or by fetch.
  // Of `offline`, which reads nothing, whether the reader saves data.
  app: [...pure, 'offline'],
  // What only the build runs; it reads `app` for the types of what it hands over.
  site: [...pure, 'text', 'content', 'offline', 'app'],
  pages: [...pure, 'text', 'content', 'offline', 'app', 'site'],
  // Of `app` the words of what is handed over: the same at a terminal as on a page.
  cli: [...pure, 'text', 'content', 'app'],
};

/** Zones of import-x/no-restricted-paths. */
export const directions = [
  { target: 'src', from: 'tests', message: 'What is published reads no test.' },
  ...Object.entries(READS).flatMap(([target, reads]) =>
    Object.keys(READS)
      .filter((from) => from !== target && !reads.includes(from))
      .map((from) => ({
        target: `src/${target}`,
        from: `src/${from}`,
        message: `src/${target} reads ${reads.length > 0 ? reads.join(', ') : 'no other room'} only.`,
      })),
  ),
];

const NODE = ['node:*', 'fs', 'path', 'fs/*'];

/**
 * Packages some folders may not import. ESLint lets the last block that matches a file decide, so
 * each file is matched by one block only.
 * @type {{ files: string[], ignores?: string[], group: string[], message: string }[]}
 */
export const packages = [
  {
    files: [`src/{${pure.join()}}/**`, 'src/*.ts'],
    group: [
      ...NODE,
      'astro',
      'astro/*',
      'astro:*',
      '@astrojs/*',
      'solid-js',
      'solid-js/*',
      'i18next',
    ],
    message: 'Pure code knows no Node, no Astro, no Solid and no sentence.',
  },
  {
    files: ['src/app/question/**'],
    group: [...NODE, 'zod', 'zod/*', 'i18next', 'solid-js', 'solid-js/*', 'astro:*'],
    message: 'A question page weighs at most 14,600 bytes: no zod, i18next or Solid on it.',
  },
  {
    files: ['src/app/**'],
    ignores: ['src/app/question/**'],
    group: [...NODE, 'i18next', 'astro', 'astro:*'],
    message: 'What the browser runs reads no file and knows no Astro.',
  },
];

/** Files of the pure rooms, which know no browser and no Node. */
export const pureFiles = [`src/{${pure.join()}}/**/*.ts`, 'src/*.ts'];
