import { readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

const COMPRESSIBLE = new Set(
  '.css .csv .html .js .json .mjs .svg .txt .wasm .webmanifest .xml'.split(' '),
);

const ENCODERS = [
  {
    suffix: '.br',
    encode: (input: Buffer) =>
      promisify(brotliCompress)(input, {
        params: {
          [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
          [constants.BROTLI_PARAM_SIZE_HINT]: input.length,
        },
      }),
  },
  { suffix: '.gz', encode: (input: Buffer) => promisify(gzip)(input, { level: 9 }) },
];

/** Puts a file in place whole: a reader never sees half of it. */
async function writeWhole(file: string, data: Buffer, modified: Date): Promise<void> {
  const draft = `${file}.${String(process.pid)}.tmp`;
  await writeFile(draft, data);
  await utimes(draft, modified, modified);
  await rename(draft, file);
}

/**
 * Writes a `.br` and a `.gz` copy beside every compressible file of a built site, as static hosts
 * expect them. A copy carries its original's time, so what is already there and current is kept.
 * A copy that would not be smaller is left out.
 *
 * @param dir the built site, absolute or relative to the working directory
 */
export async function precompress(dir: string): Promise<void> {
  const entries = await readdir(dir, { recursive: true, withFileTypes: true });
  const files = entries
    .filter((entry) => entry.isFile() && COMPRESSIBLE.has(extname(entry.name)))
    .map((entry) => join(entry.parentPath, entry.name));
  for (const file of files) {
    const { mtime, size } = await stat(file);
    for (const { suffix, encode } of ENCODERS) {
      const copy = file + suffix;
      const there = await stat(copy).catch(() => undefined);
      if (there !== undefined && Math.abs(there.mtimeMs - mtime.getTime()) < 1000) continue;
      const packed = await encode(await readFile(file));
      if (packed.length < size) await writeWhole(copy, packed, mtime);
      else await rm(copy, { force: true });
    }
  }
}
