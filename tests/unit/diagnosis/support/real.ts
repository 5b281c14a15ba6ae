import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadModel } from '../../../../src/diagnosis/load.ts';
import type { Evidence, Model } from '../../../../src/diagnosis/types.ts';
import { loadDetails } from '../../../../src/guide/details.ts';
import { realGuide } from '../../guide/support/real.ts';

function read(path: string): string {
  return readFileSync(fileURLToPath(new URL(`../../../../${path}`, import.meta.url)), 'utf8');
}

/** The published figures, as their authors write them. */
export const realFaults = read('content/guides/door-locked/faults.yaml');

/** What the published figures are checked against. */
export function realContext() {
  const details = loadDetails(read('content/details.yaml'), 'details.yaml');
  if (!details.ok) throw new Error(JSON.stringify(details.error));
  return { guide: realGuide(), details: details.value };
}

/** The published model. */
export function realModel(): Model {
  const loaded = loadModel(realFaults, 'faults.yaml', realContext());
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
}

/** Evidence from `key.answer` pairs: `listen.nothing`, `detail.fuel.gas`, `check.supply.both-legs`. */
export function given(...pairs: readonly string[]): Evidence {
  return pairs.map((pair) => {
    const dot = pair.lastIndexOf('.');
    return { key: pair.slice(0, dot), answer: pair.slice(dot + 1) };
  });
}
