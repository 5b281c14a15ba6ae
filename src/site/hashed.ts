import { createHash } from 'node:crypto';

/** A file name that changes with its content, so that a kept copy is never an old one. */
export function hashedName(name: string, content: string): string {
  const hash = createHash('sha256').update(content).digest('base64url').slice(0, 10);
  return `${name}.${hash}`;
}
