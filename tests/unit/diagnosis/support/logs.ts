import { guides, models } from '../../../../src/content/load.ts';
import { loadFigures } from '../../../../src/diagnosis/load.ts';
import { perturbed } from '../../../../src/diagnosis/perturb.ts';
import { seeded } from '../../../../src/diagnosis/random.ts';
import type { ModelFile } from '../../../../src/diagnosis/schema.ts';
import type { RecordedVisit } from '../../../../src/diagnosis/visits-schema.ts';
import { realContext, realFiles } from './real.ts';
import { simulate } from './simulate.ts';

/** The published figures in their authors' form. */
export function realFile(): ModelFile {
  const loaded = loadFigures(realFiles, realContext());
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
}

/**
 * A log of visits drawn from the published figures, each of them off by up to
 * `factor` as `truth` has it; `seed` draws the visits.
 */
export function logOf(
  count: number,
  factor: number,
  truth: number,
  seed: number,
  of = 'door-locked',
): RecordedVisit[] {
  const model = models()[of];
  const guide = guides().find(({ id }) => String(id) === of);
  if (!model || !guide) throw new Error(`no guide ${of}`);
  const world = { ...realContext(), guide, truth: perturbed(model, factor, seeded(truth)) };
  return simulate(world, count, seeded(seed)).map(({ fault, evidence }) => ({
    answers: Object.fromEntries(evidence.map(({ key, answer }) => [key, answer])),
    fault: String(model.faults[fault]?.id).replace('none-of-these', 'other'),
    parts: (model.faults[fault]?.parts ?? []).map(String),
  }));
}
