// node plain-server.ts FOLDER PATH [USER]: a plain file server, as any machine has one. Serves the
// folder under a path, knows no headers file and no compressed copies, and prints its port.
import { access, constants } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import sirv from 'sirv';

const [dir = '', folder = '/', user] = process.argv.slice(2);
if (user !== undefined) {
  process.setgid?.(Number(user));
  process.setuid?.(Number(user));
}
const writable = await access(dir, constants.W_OK).then(
  () => true,
  () => false,
);
const files = sirv(dir);
const server = createServer((request, response) => {
  const missing = () => void response.writeHead(404).end();
  const inside = request.url?.startsWith(folder) === true;
  request.url = (request.url ?? '').slice(folder.length - 1);
  if (inside) files(request, response, missing);
  else missing();
});
server.listen(0, '127.0.0.1', () => {
  const { port } = server.address() as AddressInfo;
  console.log(JSON.stringify({ port, writable }));
});
