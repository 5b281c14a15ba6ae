import { spawnSync } from 'node:child_process';

function runs(command: string, args: string[], quiet = false): boolean {
  const { status } = spawnSync(command, args, {
    stdio: quiet ? 'ignore' : 'inherit',
    // Debian's run level 1 starts no service: what is installed here is only for tests.
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive', RUNLEVEL: '1' },
  });
  return status === 0;
}

/** Runs apt-get, as root or through sudo when it asks for no password. */
function apt(...args: string[]): boolean {
  if (process.getuid?.() === 0) return runs('apt-get', args);
  const settings = ['DEBIAN_FRONTEND=noninteractive', 'RUNLEVEL=1'];
  return runs('sudo', ['-n', ...settings, 'apt-get', ...args]);
}

/** Installs a package of the distribution. Gives the reason when that cannot be done. */
export function aptInstall(name: string): string | undefined {
  if (!runs('apt-get', ['--version'], true)) return `There is no apt-get to install ${name}.`;
  if (process.getuid?.() !== 0 && !runs('sudo', ['-n', 'true'], true))
    return `Installing ${name} needs root or sudo without a password.`;
  console.log(`Installing ${name} with apt-get …`);
  if (!apt('update') || !apt('install', '--yes', '--no-install-recommends', name))
    return `apt-get could not install ${name}: see its message above.`;
  return undefined;
}
