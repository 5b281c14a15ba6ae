/** What of the model the note page needs to ask the details that tell most: made at build time. */
import type { Guide } from '../guide/types.ts';
import { bitsOf } from './ask.ts';
import { COMPLAINT, KIND, VISIT, detailKey, keyIn } from './evidence.ts';
import { at } from './numbers.ts';
import { shares } from './posterior.ts';
import type { Evidence, Model } from './types.ts';

/**
 * How much each detail is expected to tell after a journey, in hundredths of a bit, in the order of
 * the details: `base` before any answer, and what each answer changes of it by itself. Their sum
 * stands in for the model, which weighs ten times as much: its best three hold nine tenths of the
 * bits that the model's own three do, in the locked door's guide a little more than four fifths (`tests/unit/diagnosis/ask.test.ts`).
 */
export interface AskTable {
  readonly base: readonly number[];
  /** Text id of a node → answer → changes; what changes nothing is left out. */
  readonly by: Readonly<Record<string, Readonly<Record<string, readonly number[]>>>>;
}

const hundredths = (bits: number): number => Math.round(bits * 100);

/** Smaller changes are left out, for weight, but for those that leave a question nothing to tell. */
const LEAST = 20;

export function askTable(model: Model, guide: Guide, details: readonly string[]): AskTable {
  const start: Evidence = [
    { key: COMPLAINT, answer: guide.id },
    { key: VISIT, answer: 'needed' },
  ];
  // What kind of range it is decides who comes and how long it takes: asked in any case.
  const kind = details.indexOf(KIND);
  const told = (evidence: Evidence) => {
    const now = shares(model, evidence);
    return details.map((id) => bitsOf(model, evidence, detailKey(id), now));
  };
  const before = told(start);
  const tables = new Map(model.evidence.map((one) => [one.key, one]));
  const keys = new Set(tables.keys());
  const nodes = new Set([...guide.nodes.values()].map(({ sentences }) => String(sentences)));
  const by = [...nodes].map((sentences) => {
    const key = keyIn(keys, guide.id, sentences);
    const answers = (tables.get(key)?.answers ?? []).map((answer) => {
      const after = told([...start, { key, answer }]);
      const changes = after.map((bits, place) => {
        const change = hundredths(bits - at(before, place));
        const silent = hundredths(at(before, place)) + change <= 0;
        return place !== kind && (silent || Math.abs(change) >= LEAST) ? change : 0;
      });
      return [answer, changes] as const;
    });
    const telling = answers.filter(([, changes]) => changes.some(Boolean));
    return [sentences, Object.fromEntries(telling)] as const;
  });
  return {
    base: before.map((bits, place) => hundredths(bits) + (place === kind ? 1 : 0)),
    by: Object.fromEntries(by.filter(([, answers]) => Object.keys(answers).length > 0)),
  };
}
