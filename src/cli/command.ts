import { parseArgs, type ParseArgsConfig } from 'node:util';
import { ContentError } from '../content/load.ts';

/** Ends a command that cannot do what it was asked, with what to do instead and status 2. */
export function fail(message: string): never {
  console.error(message);
  process.exit(2);
}

/** The command line, read; a slip in it is told with how the command is used. */
export function options<const T extends ParseArgsConfig>(
  config: T,
  usage: string,
): ReturnType<typeof parseArgs<T>> {
  try {
    return parseArgs(config);
  } catch (error) {
    return fail(`${error instanceof Error ? error.message : String(error)}\n${usage}`);
  }
}

/** A whole number given with an option, from `least` to `most`. */
export function wholeNumber(text: string, option: string, least: number, most: number): number {
  const number = /^\d{1,9}$/.test(text) ? Number(text) : NaN;
  if (number >= least && number <= most) return number;
  return fail(
    `--${option} takes a whole number from ${String(least)} to ${String(most)}, not "${text}".`,
  );
}

/** Runs a command; broken content ends it with its own words and status 2. */
export async function command(main: () => void | Promise<void>): Promise<void> {
  try {
    await main();
  } catch (error) {
    // Anything else is a fault of ours, and its stack says where.
    if (!(error instanceof ContentError)) throw error;
    console.error(error.message);
    process.exitCode = 2;
  }
}
