import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { details, models, wholeGuides } from '../../../../src/content/load.ts';
import { observed } from '../../../../src/diagnosis/evidence.ts';
import type { Evidence, Model } from '../../../../src/diagnosis/types.ts';
import { realGuide } from '../../guide/support/real.ts';

const folder = fileURLToPath(new URL('../../../../content/model/', import.meta.url));

/** The published figures, as their authors write them. */
export const realFiles = readdirSync(folder)
  .toSorted()
  .map((file) => ({ file, source: readFileSync(`${folder}${file}`, 'utf8') }));

/** What the published figures are checked against. */
export function realContext() {
  return { guides: wholeGuides(), details: details(), guide: realGuide() };
}

/** The cut of the published model for a door that stays locked. */
export function realModel(): Model {
  const model = models()['door-locked'];
  if (!model) throw new Error('no model');
  return model;
}

/** Evidence from `key.answer` pairs: `listen.nothing`, `detail.fuel.gas`, `check.supply.both-legs`. */
export function given(...pairs: readonly string[]): Evidence {
  return pairs.map((pair) => {
    const dot = pair.lastIndexOf('.');
    return { key: pair.slice(0, dot), answer: pair.slice(dot + 1) };
  });
}

/** The same told of a door that stays locked, as the model names it. */
export function told(...pairs: readonly string[]): Evidence {
  const course = { first: 'door-locked', last: 'door-locked' };
  return observed(realModel(), course, given(...pairs));
}
