// npm run -s nginx [-- --root FOLDER --site ADDRESS --listen PORT]: prints what nginx needs.
import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { firm, languages } from '../content/load.ts';
import { command } from './command.ts';
import { inRoot } from './root.ts';
import { parseHeaders } from './headers.ts';
import { nginxConfig } from './nginx-config.ts';

function fail(message: string): never {
  console.error(message);
  process.exit(1);
}

function options() {
  try {
    return parseArgs({
      options: {
        root: { type: 'string', default: '/srv/hobnote' },
        site: { type: 'string', default: firm().site },
        listen: { type: 'string', default: '80' },
      },
    }).values;
  } catch (error) {
    return fail(
      `${error instanceof Error ? error.message : String(error)}\n` +
        'npm run -s nginx -- --root /srv/hobnote --site https://range.example/ --listen 80',
    );
  }
}

await command(async () => {
  const headers = await readFile(inRoot('dist/_headers'), 'utf8').catch(() =>
    fail('Nothing is built yet: run "npm run build" first.'),
  );
  const { root, site, listen } = options();
  if (!URL.canParse(site)) fail(`--site ${site}: give an address such as https://range.example/`);
  process.stdout.write(
    nginxConfig({ root, site, listen, rules: parseHeaders(headers), languages: languages() }),
  );
});
