import { readdir, readFile, stat, utimes, writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { extname, join, relative } from 'node:path';
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

/**
 * Writes a `.br` and a `.gz` copy beside every compressible file of a built site, as static hosts
 * expect them, each with its original's time, none that would not be smaller. Brotli's are half the
 * work of a build: what an earlier one had alike keeps its copies.
 *
 * @param dir the built site, absolute or relative to the working directory
 * @param earlier another built site, if there is one: a build is made beside the last (`cli/build.ts`)
 */
export async function precompress(dir: string, earlier?: string): Promise<void> {
  const entries = await readdir(dir, { recursive: true, withFileTypes: true });
  const files = entries
    .filter((entry) => entry.isFile() && COMPRESSIBLE.has(extname(entry.name)))
    .map((entry) => join(entry.parentPath, entry.name));
  const work = async () => {
    for (let file = files.pop(); file !== undefined; file = files.pop()) {
      const [{ mtime }, data] = await Promise.all([stat(file), readFile(file)]);
      const before = join(earlier ?? '', relative(dir, file));
      const alike =
        earlier !== undefined && (await readFile(before).catch(() => undefined))?.equals(data);
      for (const { suffix, encode } of ENCODERS) {
        const packed =
          (alike ? await readFile(before + suffix).catch(() => undefined) : undefined) ??
          (await encode(data));
        if (packed.length >= data.length) continue;
        await writeFile(file + suffix, packed);
        await utimes(file + suffix, mtime, mtime);
      }
    }
  };
  await Promise.all(Array.from({ length: availableParallelism() }, work));
}
