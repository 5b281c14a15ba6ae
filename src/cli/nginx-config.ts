import { TYPES, headersFor, type HeaderRule } from '../headers.ts';

/** What nginx must know of a built site. */
export interface NginxSite {
  /** Folder of the built site on the host, absolute. */
  readonly root: string;
  /** The site's public address; its path is the folder the site lies under. */
  readonly site: string;
  /** What `listen` takes: a port, or an address and a port. */
  readonly listen: string;
  /** The headers of the site's own `_headers` file: the one source of all of them. */
  readonly rules: readonly HeaderRule[];
  /** The site's languages, the default one first. */
  readonly languages: readonly string[];
}

/** A value in nginx's double quotes. A dollar sign would name a variable and cannot be escaped. */
function quoted(value: string): string {
  if (/[$"\\\n]/.test(value)) throw new Error(`nginx cannot be told ${JSON.stringify(value)}`);
  return `"${value}"`;
}

type Values = readonly (readonly [key: string, value: string])[];

/** A variable of the `http` block. The first regular expression that matches counts. */
function map(from: string, name: string, values: Values): string {
  const lines = values.map(([key, value]) => `  ${key} ${quoted(value)};\n`);
  return `map ${from} $hobnote_${name} {\n${lines.join('')}}\n`;
}

/** A folder's files, by the beginning of their address, or one file. */
function filesOf(folder: string, pattern: string): string {
  const [, path, all] = /^\/([\w/-]*|[\w/-]+\.json)(\*?)$/.exec(pattern) ?? [];
  if (path === undefined || (all === '' && !path.endsWith('.json')))
    throw new Error(`_headers: ${pattern} is neither a folder nor a file`);
  if (all === '') return `${folder}${path}`;
  return path === '' ? 'default' : `~^${folder}${path}`;
}

/** What nginx is told for one header: a variable where the values differ, with the map it needs. */
interface HeaderConfig {
  readonly map: string;
  readonly line: string;
}

/**
 * One header. `_headers` joins the values of all blocks that match and nginx takes the first, so
 * the joined ones are written, the last block first. The address looked at is the file's that is
 * answered with: a missing file's answer is the 404 page's.
 */
function told(header: string, folder: string, rules: readonly HeaderRule[]): HeaderConfig {
  const giving = rules.filter(({ headers }) => headers.some(([name]) => name === header));
  const own = giving.toReversed().map(({ pattern }) => {
    const joined = headersFor(rules, pattern.replace('*', '')).get(header.toLowerCase()) ?? '';
    return [filesOf(folder, pattern), joined] as const;
  });
  // Files named by their content never change; all others are asked for again.
  const rest: Values = header === 'Cache-Control' ? [['default', 'no-cache']] : [];
  const values = [...own, ...rest];
  const line = (value: string) => `add_header ${header} ${value} always;`;
  const [[key, value] = ['', '']] = values;
  if (values.length === 1 && key === 'default') return { map: '', line: line(quoted(value)) };
  const name = header.toLowerCase().replaceAll('-', '_');
  return { map: map('$uri', name, values), line: line(`$hobnote_${name}`) };
}

/**
 * Chooses the first page's language: the first one in the reader's list that the site speaks
 * (browsers list the best first; weights are not looked at). Who comes from a page of the site has
 * chosen already and gets what the address says (Fetch Metadata, `Sec-Fetch-Site`).
 */
function languageMaps(folder: string, [main = '', ...others]: readonly string[]): string {
  const all = [main, ...others].join('|');
  const first = (language: string) => `"~*^(?:(?!\\s*(?:${all})\\b)[^,]*,)*\\s*${language}\\b"`;
  return [
    map('$http_accept_language', 'prefers', [
      ['default', 'index.html'],
      ...others.map((language) => [first(language), `index.${language}.html`] as const),
    ]),
    `map $http_sec_fetch_site $hobnote_first {\n  default $hobnote_prefers;\n  same-origin "index.html";\n}\n`,
    map('$uri', 'vary', [
      [`"~^${folder}index(\\.[a-z]+)?\\.html$"`, 'Accept-Language, Sec-Fetch-Site'],
    ]),
  ].join('');
}

const KINDS = `types {
${[...TYPES].map(([ending, kind]) => `      ${kind} ${ending.slice(1)};\n`).join('')}    }
    charset utf-8;
    charset_types text/css text/csv text/javascript text/plain application/json application/manifest+json;`;

/**
 * A file for nginx's `conf.d`: one server that answers with a built site, nothing else. All of it
 * but the maps stands in locations, which can be moved into a server that is there already.
 *
 * @throws Error where a value cannot be written in nginx's language.
 */
export function nginxConfig({ root, site, listen, rules, languages }: NginxSite): string {
  const { hostname, pathname } = new URL(site);
  const folder = pathname.endsWith('/') ? pathname : `${pathname}/`;
  if (!/^[\w.:[\]-]+$/.test(hostname)) throw new Error(`nginx cannot be told ${hostname}`);
  if (!/^(?:unix:[\w./-]+|(?:[\w.*-]+:|\[[\da-f:.]+\]:)?\d{1,5})$/i.test(listen))
    throw new Error(
      `--listen takes a port, or an address and a port, not ${JSON.stringify(listen)}`,
    );
  if (!/^[\w./-]+$/.test(folder + root)) throw new Error(`nginx cannot be told ${folder} ${root}`);
  const names = [...new Set(rules.flatMap((rule) => rule.headers.map(([name]) => name)))];
  if (!names.includes('Content-Security-Policy')) throw new Error('_headers has no policy');
  const headers = names.map((name) => told(name, folder, rules));
  const chooses = languages.length > 1;
  const added = [
    ...headers.map(({ line }) => line),
    ...(chooses ? ['add_header Vary $hobnote_vary always;'] : []),
  ];
  return `# Answers with a built Hobnote. Made by "npm run -s nginx": make it anew after a build that
# changes headers or languages. For HTTPS add "listen 443 ssl" and the certificate's two lines;
# without HTTPS browsers keep nothing for use with no network. Where all of the host is for HTTPS and
# stays so, also: add_header Strict-Transport-Security "max-age=31536000" always;

${headers.map(({ map: lines }) => lines).join('')}${chooses ? languageMaps(folder, languages) : ''}
server {
  listen ${listen};
  server_name ${hostname};
  absolute_redirect off;

  location ^~ ${folder} {
    alias ${root.replace(/\/*$/, '/')};
    index index.html;
    # A folder without a page is not there, as any other name that is not.
    error_page 403 =404 ${folder}404.html;
    error_page 400 404 405 414 416 500 ${folder}404.html;
    ${KINDS}

    # The build brings a .gz beside each file. With the module for it, "brotli_static on" saves more.
    gzip_static on;
    gzip_vary on;
    etag on;

    # A question's address tells where a reader is; the rest of a journey never gets here.
    access_log off;

    ${added.join('\n    ')}
  }
  location = ${folder}_headers {
    error_page 404 ${folder}404.html;
    return 404;
  }
${chooses ? `  location = ${folder} {\n    rewrite ^ ${folder}$hobnote_first last;\n  }\n` : ''}${folder === '/' ? '' : `  location = ${folder.slice(0, -1)} {\n    return 301 ${folder};\n  }\n`}}
`;
}
