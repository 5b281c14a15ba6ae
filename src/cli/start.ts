import { serve, type Served } from './serve.ts';

const DEFAULT_PORT = 4400;
/** Ports tried one after the other when the default is taken. */
const TRIES = 50;

function isTaken(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
}

function fail(message: string): never {
  console.error(message);
  process.exit(1);
}

/** The port the person asked for, or undefined. */
function askedPort(): number | undefined {
  const text = process.env['PORT'];
  if (text === undefined || text === '') return undefined;
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    fail(`PORT=${text} is not a port number. Give a whole number from 0 to 65535.`);
  return port;
}

async function serveOnFreePort(dir: string, host: string): Promise<Served> {
  for (let port = DEFAULT_PORT; port < DEFAULT_PORT + TRIES; port += 1) {
    try {
      const served = await serve({ dir, port, host });
      if (port !== DEFAULT_PORT)
        console.log(`Port ${String(DEFAULT_PORT)} is taken; using ${String(port)} instead.`);
      return served;
    } catch (error) {
      if (!isTaken(error)) throw error;
    }
  }
  return fail('No free port found. Choose one yourself: PORT=8080 npm start');
}

const host = process.env['HOST'] ?? '127.0.0.1';
const port = askedPort();
try {
  const served =
    port === undefined
      ? await serveOnFreePort('dist', host)
      : await serve({ dir: 'dist', port, host });
  console.log(`Hobnote is ready at ${served.url.replace('127.0.0.1', 'localhost')}`);
  console.log('Press Ctrl+C to stop.');
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => void served.close().then(() => process.exit(0)));
} catch (error) {
  if (isTaken(error))
    fail(
      `Port ${String(port)} is taken. Stop what uses it, or choose another: PORT=8080 npm start`,
    );
  fail(error instanceof Error ? error.message : String(error));
}
