/** A command of src/cli run in this process: its whole file anew, but what it imports only once. */
import { vi } from 'vitest';
import { inRoot } from '../../../src/cli/root.ts';

/** Thrown in place of ending the process. */
class Exit extends Error {}

let runs = 0;

/**
 * What it prints and the status it ends with. For commands that read no standard
 * input; one run of each as a process of its own stays beside these.
 */
export async function here(file: string, ...words: readonly string[]) {
  const printed = { out: '', err: '' };
  const { argv, exitCode } = process;
  const listeners = process.stdout.listeners('error');
  const spies = [
    vi.spyOn(console, 'log').mockImplementation((text: string) => {
      printed.out += `${text}\n`;
    }),
    vi.spyOn(console, 'error').mockImplementation((text: string) => {
      printed.err += `${text}\n`;
    }),
    vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
      printed.out += String(text);
      return true;
    }),
    vi.spyOn(process, 'exit').mockImplementation((code) => {
      process.exitCode = code;
      throw new Exit();
    }),
  ];
  try {
    process.argv = [process.execPath, inRoot(file), ...words];
    process.exitCode = undefined;
    await import(/* @vite-ignore */ `${inRoot(file)}?run=${(runs += 1)}`);
  } catch (error) {
    if (!(error instanceof Exit)) throw error;
  } finally {
    for (const spy of spies) spy.mockRestore();
    process.argv = argv;
    for (const listener of process.stdout.listeners('error'))
      if (!listeners.includes(listener)) process.stdout.off('error', listener as () => void);
  }
  const status = Number(process.exitCode ?? 0);
  process.exitCode = exitCode;
  return { status, ...printed };
}
