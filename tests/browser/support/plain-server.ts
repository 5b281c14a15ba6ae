// node plain-server.ts FOLDER PATH [USER]: a plain file server, as any machine has one. Serves the
// folder under a path, knows no headers file and no compressed copies, and prints its port.
import { access, constants, readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { TYPES } from '../../../src/headers.ts';

const [dir = '', folder = '/', user] = process.argv.slice(2);
if (user !== undefined) {
  process.setgid?.(Number(user));
  process.setuid?.(Number(user));
}
const writable = await access(dir, constants.W_OK).then(
  () => true,
  () => false,
);
const server = createServer(({ url = '' }, response) => {
  const { pathname } = new URL(url, 'http://localhost');
  const inside = pathname.startsWith(folder) ? decodeURI(pathname.slice(folder.length)) : '..';
  const file = join(dir, inside, /(^|\/)$/.test(inside) ? 'index.html' : '');
  const kind = file.startsWith(dir) ? TYPES.get(extname(file)) : undefined;
  (kind === undefined ? Promise.reject(new Error(url)) : readFile(file)).then(
    (body) => response.writeHead(200, { 'Content-Type': kind }).end(body),
    () => response.writeHead(404).end(),
  );
});
server.listen(0, '127.0.0.1', () => {
  const { port } = server.address() as AddressInfo;
  console.log(JSON.stringify({ port, writable }));
});
