// Installs the distribution's nginx when there is none; silent when there is one. Where it cannot
// be installed its tests are skipped, except on the machine that checks every change (CI).
import { existsSync } from 'node:fs';
import { aptInstall } from './apt.ts';

/** Where distributions put nginx. */
export const NGINX = '/usr/sbin/nginx';

if (import.meta.main && !existsSync(NGINX)) {
  const problem = aptInstall('nginx');
  if (problem !== undefined) console.log(`${problem} The tests of nginx are skipped.`);
  if (problem !== undefined && process.env['CI'] !== undefined) process.exitCode = 1;
}
