// The programs that tests and benchmarks drive: where they are, and how they are started.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync, globSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium as downloaded } from '@playwright/test';

interface Part {
  /** Debian's package with it. */
  readonly debian: string;
  /** Its names on the PATH. */
  readonly names: readonly string[];
  /** Where it may lie besides; those of Playwright and Macs, and files that are no programs. */
  readonly places?: () => readonly string[];
  /** The variable that names it; it is then looked for nowhere else. */
  readonly variable?: string;
}
interface Parts {
  readonly parts: readonly [Part, ...Part[]];
  /** How a person adds it. */
  readonly add: string;
}

const onMac = (app: string, file = app) => `/Applications/${app}.app/Contents/MacOS/${file}`;
const WHOLE_CHROMIUM: Part = {
  ...{ debian: 'chromium', variable: 'CHROMIUM' },
  names: ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'],
  places: () => [onMac('Chromium'), onMac('Google Chrome'), downloaded.executablePath()],
};
/** The same engine without what only a screen needs: the tests take two thirds of the time. */
const CHROMIUM: Part = {
  ...WHOLE_CHROMIUM,
  debian: 'chromium-headless-shell',
  names: ['chromium-headless-shell', ...WHOLE_CHROMIUM.names],
};
const FIREFOX: Part = {
  ...{ debian: 'firefox-esr', variable: 'FIREFOX', names: ['firefox-esr', 'firefox'] },
  places: () => [onMac('Firefox', 'firefox')],
};
const WEBKIT_DRIVER: Part = { debian: 'webkit2gtk-driver', names: ['WebKitWebDriver'] };
const MINI_BROWSER: Part = {
  ...{ debian: 'webkit2gtk-driver', names: [] },
  // Debian has a folder of the machine's kind between.
  places: () => globSync('/usr/{lib,lib/*,lib64,libexec}/webkit*gtk-*/MiniBrowser'),
};
const SCREEN: Part = { debian: 'xvfb', names: ['xvfb-run'] };
const NGINX: Part = {
  ...{ debian: 'nginx', variable: 'NGINX', names: ['nginx'] },
  // Users' PATHs often lack the folder of what only root is to start.
  places: () => ['/usr/sbin/nginx'],
};

const SPIN: Part = { debian: 'spin', variable: 'SPIN', names: ['spin'] };
const HUNSPELL: Part = { debian: 'hunspell', variable: 'HUNSPELL', names: ['hunspell'] };
/** The dictionary of each language as its sentences are written. */
export const DICTIONARIES: Readonly<Record<string, string>> = {
  en: 'en_US',
  es: 'es_US',
  fr: 'fr_CA',
  ar: 'ar',
};
const [ENGLISH, SPANISH, FRENCH, ARABIC] = ['en-us', 'es', 'fr', 'ar'].map((language): Part => ({
  ...{ debian: `hunspell-${language}`, names: [] },
  places: () => [`/usr/share/hunspell/${DICTIONARIES[language.slice(0, 2)] ?? ''}.dic`],
})) as [Part, Part, Part, Part];
const COMPILER: Part = { debian: 'gcc', names: ['gcc'] };

export const PROGRAMS = {
  Chromium: { parts: [CHROMIUM], add: 'install Chromium or Chrome, or set CHROMIUM to its path' },
  Firefox: { parts: [FIREFOX], add: 'install Firefox, or set FIREFOX to its path' },
  WebKit: {
    parts: [WEBKIT_DRIVER, MINI_BROWSER, SCREEN],
    add: 'on Linux, install its driver (webkit2gtk-driver) and xvfb',
  },
  nginx: { parts: [NGINX], add: 'install nginx, or set NGINX to its path' },
  Hunspell: {
    parts: [HUNSPELL, ENGLISH, SPANISH, FRENCH, ARABIC],
    add: 'install hunspell and its dictionaries en_US, es_US, fr_CA and ar',
  },
  SPIN: { parts: [SPIN, COMPILER], add: 'install spin and gcc, or set SPIN to its path' },
} as const satisfies Record<string, Parts>;
export type Program = keyof typeof PROGRAMS;

function runnable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function find({ names, places, variable = '' }: Part): string | undefined {
  const asked = process.env[variable];
  if (asked) return [asked].find(runnable);
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  const onPath = names.flatMap((name) => folders.map((folder) => join(folder, name)));
  return onPath.find(runnable) ?? places?.().find(existsSync);
}

/** Debian's packages of a program's parts that are not there; none where all is there. */
export function missing(program: Program): readonly string[] {
  return PROGRAMS[program].parts.filter((part) => !find(part)).map(({ debian }) => debian);
}

/** Path of a part, or an error that says what to do. */
function need(part: Part, program: Program): string {
  const found = find(part);
  if (found === undefined)
    throw new Error(
      `No ${program} found. Run "node .config/get-browsers.ts", or ${PROGRAMS[program].add}.`,
    );
  return found;
}

/** Path of the Chromium to drive. Throws where there is none; so do those that follow. */
export const chromium = (): string => need(CHROMIUM, 'Chromium');
/** Path of a Chromium as people have it, for measurements. */
export const wholeChromium = (): string => need(WHOLE_CHROMIUM, 'Chromium');
/** Path of the Firefox to drive. */
export const firefox = (): string => need(FIREFOX, 'Firefox');
/** Path of WebKit's WebDriver. */
export const webkitDriver = (): string => need(WEBKIT_DRIVER, 'WebKit');
/** Path of WebKit's own small browser. */
export const miniBrowser = (): string => need(MINI_BROWSER, 'WebKit');
/** Path of the program that gives WebKit a screen where there is none. */
export const virtualScreen = (): string => need(SCREEN, 'WebKit');
/** Path of nginx. */
export const nginxProgram = (): string => need(NGINX, 'nginx');
/** Path of the model checker SPIN. */
export const spinProgram = (): string => need(SPIN, 'SPIN');

/** Path of the spelling checker. */
export const hunspellProgram = (): string => need(HUNSPELL, 'Hunspell');

/** What a program says of its name and version, in one line; its name where it tells none. */
export function version(program: Program): string {
  const path = need(PROGRAMS[program].parts[0], program);
  const said = spawnSync(path, ['--version'], { encoding: 'utf8' }).stdout.trim();
  // WebKit's driver answers with how it is used.
  return /^[^\n]*\d[^\n]*$/.test(said) ? said : program;
}

/** Start flags: nothing that calls home, nothing that needs a display or a kernel sandbox. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--disable-quic',
  '--disable-gpu',
];
