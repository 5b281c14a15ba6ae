import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openContent } from '../../../src/content/content.ts';
import { gates } from '../../../src/content/gates.ts';
import type { Gate } from '../../../src/content/gates.ts';
import { tellProblem } from '../../../src/content/tell.ts';

const published = fileURLToPath(new URL('../../../content', import.meta.url));

/** Languages of the published content that no copy speaks as they are. */
const LEFT_OUT = ['es', 'fr'].map((language) => join(published, 'text', language));

/** A copy of the published content to break, in English alone; `done` takes it away. */
export function copyOfContent(): { readonly folder: string; readonly done: () => void } {
  const top = mkdtempSync(join(tmpdir(), 'copy-'));
  const folder = join(top, 'content');
  cpSync(published, folder, { recursive: true, filter: (path) => !LEFT_OUT.includes(path) });
  const firm = join(folder, 'firm.yaml');
  const text = readFileSync(firm, 'utf8');
  writeFileSync(firm, text.replace(/^languages: .*$/m, 'languages: [en]'));
  return { folder, done: () => rmSync(top, { recursive: true }) };
}

/** One text of a file replaced by another; it has to stand there once. Returns its line. */
export function spoil(folder: string, file: string, from: string, to: string): number {
  const path = join(folder, file);
  const text = readFileSync(path, 'utf8');
  const [before = '', after, ...more] = text.split(from);
  if (after === undefined || more.length > 0) throw new Error(`Not once in ${file}: ${from}`);
  writeFileSync(path, before + to + after);
  return before.split('\n').length;
}

/** What a gate tells of a folder, as the build prints it. */
export function toldBy(id: Gate['id'], folder: string): readonly string[] {
  const gate = gates.find((one) => one.id === id);
  if (!gate) throw new Error(`no gate ${id}`);
  return gate.check(openContent(folder)).map(tellProblem);
}
