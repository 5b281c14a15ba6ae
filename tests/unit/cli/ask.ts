import { request } from 'node:http';

export interface Answer {
  readonly status: number | undefined;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: Buffer;
}

/**
 * A request as written: nothing decoded, unpacked, followed or tidied.
 *
 * @param origin `http://127.0.0.1:8080`, with or without a slash
 */
export function ask(
  origin: string,
  path: string,
  headers: Readonly<Record<string, string>> = {},
  method = 'GET',
): Promise<Answer> {
  return new Promise((done, failed) => {
    const { hostname, port } = new URL(origin);
    const sent = request({ hostname, port, path, headers, method, agent: false }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () => {
        const { statusCode: status, headers: given } = response;
        done({ status, headers: given, body: Buffer.concat(chunks) });
      });
    });
    sent.on('error', failed);
    sent.end();
  });
}
