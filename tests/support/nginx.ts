import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { chmod, chown, cp, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as later } from 'node:timers/promises';
import { nginxProgram } from '../../.config/browsers.ts';

/** The user without rights on Debian and most other systems. */
export const NOBODY = 65_534;
export const isRoot = process.getuid?.() === 0;

/** A copy of a built site that everybody may read, in a folder made for it. */
export async function copyOf(dir: string): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'hobnote-host-'));
  await cp(dir, join(folder, 'site'), { recursive: true });
  await chmod(folder, 0o755);
  return folder;
}

async function freePort(): Promise<number> {
  const server = createServer();
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, 'close');
  return port;
}

async function answers(port: number, child: ChildProcess): Promise<void> {
  for (let tries = 0; tries < 100; tries += 1) {
    if (child.exitCode !== null) throw new Error('nginx did not start: see above');
    if (await fetch(`http://127.0.0.1:${String(port)}/`).catch(() => undefined)) return;
    await later(50);
  }
  throw new Error('nginx gives no answer');
}

export interface Nginx {
  readonly origin: string;
  readonly close: () => Promise<void>;
}

/**
 * Runs the distribution's nginx on a free port, as a user without rights.
 *
 * @param configFor gives the configuration under test, as included in the `http` block
 */
export async function nginx(configFor: (listen: string) => string): Promise<Nginx> {
  const folder = await mkdtemp(join(tmpdir(), 'hobnote-nginx-'));
  const port = await freePort();
  const temporary = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map(
    (name) => `${name}_temp_path ${folder}/${name};`,
  );
  await writeFile(join(folder, 'site.conf'), configFor(`127.0.0.1:${String(port)}`));
  await writeFile(
    join(folder, 'nginx.conf'),
    `daemon off; master_process off; pid ${folder}/pid; error_log stderr crit;
    events {} http { access_log off; ${temporary.join(' ')} include ${folder}/site.conf; }`,
  );
  if (isRoot) await chown(folder, NOBODY, NOBODY);
  const child = spawn(
    nginxProgram(),
    ['-e', 'stderr', '-p', folder, '-c', join(folder, 'nginx.conf')],
    {
      stdio: ['ignore', 'ignore', 'inherit'],
      ...(isRoot ? { uid: NOBODY, gid: NOBODY } : {}),
    },
  );
  const ended = once(child, 'close');
  const close = async () => {
    child.kill('SIGTERM');
    await ended;
    await rm(folder, { recursive: true });
  };
  try {
    await answers(port, child);
  } catch (error) {
    await close();
    throw error;
  }
  return { origin: `http://127.0.0.1:${String(port)}`, close };
}
