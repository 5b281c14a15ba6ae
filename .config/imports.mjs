// Who may import whom: pages → ui → text, guide, note, diagnosis, physics; cli stands beside pages.
// Inside the pure folders: note, diagnosis and physics may read the guide's types; nothing else
// crosses, except what is named here. `round` reads them all: what codes mean for a visit and a day.

/** @param {string} target @param {string[]} from @param {string} message @param {string[]} except */
const zone = (target, from, message, except = []) =>
  from.map((folder) => ({
    target: `src/${target}`,
    from: `src/${folder}`,
    message,
    except: except
      .filter((file) => file.startsWith(`${folder}/`))
      .map((file) => `./${file.slice(folder.length + 1)}`),
  }));

const OUTER = ['ui', 'pages', 'cli', 'text', 'offline'];
const PURE_KNOWS_NOTHING = 'A pure folder knows no page, no sentence and no terminal.';

/** Zones of import-x/no-restricted-paths. */
export const directions = [
  ...['guide', 'note', 'diagnosis', 'physics', 'round'].flatMap((folder) =>
    zone(folder, OUTER, PURE_KNOWS_NOTHING),
  ),
  ...zone('guide', ['note', 'diagnosis', 'round'], 'A guide does not know what is made of it.'),
  ...zone('note', ['diagnosis', 'physics', 'round'], 'The note code knows guides only.'),
  ...zone('diagnosis', ['round'], 'A diagnosis does not know whose visit it is.'),
  ...zone('physics', ['note', 'diagnosis', 'round'], 'Physics knows neither notes nor faults.'),
  ...zone('text', ['ui', 'pages', 'cli', 'offline'], 'Text is read by pages, never the reverse.'),
  ...zone('ui', ['pages', 'cli'], 'Pages use parts, never the reverse.'),
  ...zone('pages', ['cli'], 'The terminal stands beside the pages.'),
  ...zone('cli', ['pages', 'ui'], 'The terminal stands beside the pages.'),
  ...zone('ui/question', ['text'], 'i18next stays out of question pages: pass the words in.'),
];

const NODE = ['node:*', 'fs', 'path', 'fs/*'];

/**
 * Packages some folders may not import. ESLint lets the last block that matches a file decide, so
 * each file is matched by one block only.
 * @type {{ files: string[], ignores?: string[], group: string[], message: string }[]}
 */
export const packages = [
  {
    files: ['src/{guide,note,diagnosis,physics,round}/**', 'src/result.ts'],
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
    files: ['src/ui/question/**'],
    group: [...NODE, 'zod', 'zod/*', 'i18next', 'solid-js', 'solid-js/*', 'astro:*'],
    message: 'A question page weighs at most 14,600 bytes: no zod, i18next or Solid on it.',
  },
  {
    files: ['src/{ui,pages}/**'],
    ignores: ['src/ui/question/**'],
    group: NODE,
    message: 'Files are read in src/text and src/cli only.',
  },
];
