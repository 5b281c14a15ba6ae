import { ContentError } from '../content/load.ts';

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
