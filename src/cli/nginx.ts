// npm run -s nginx [-- --root FOLDER --site ADDRESS --listen PORT]: prints what nginx needs.
import { readFile } from 'node:fs/promises';
import { firm, languages } from '../content/load.ts';
import { command, fail, options } from './command.ts';
import { inRoot } from './root.ts';
import { parseHeaders } from '../headers.ts';
import { nginxConfig } from './nginx-config.ts';

await command(async () => {
  const headers = await readFile(inRoot('dist/_headers'), 'utf8').catch(() =>
    fail('Nothing is built yet: run "npm run build" first.'),
  );
  const { root, site, listen } = options(
    {
      options: {
        root: { type: 'string', default: '/srv/hobnote' },
        site: { type: 'string', default: firm().site },
        listen: { type: 'string', default: '80' },
      },
    },
    'npm run -s nginx -- --root /srv/hobnote --site https://range.example/ --listen 80',
  ).values;
  if (!URL.canParse(site)) fail(`--site ${site}: give an address such as https://range.example/`);
  process.stdout.write(
    nginxConfig({ root, site, listen, rules: parseHeaders(headers), languages: languages() }),
  );
});
