/** The part of the model that journeys from one guide can need. */
import type { Guide } from '../guide/types.ts';
import { guidesOf, qualify } from '../guide/ids.ts';
import { COMPLAINT, VISIT, detailKey } from './evidence.ts';
import { at } from './numbers.ts';
import type { AccessId, Model } from './types.ts';

/** Faults of which fewer calls come as a guide's complaint lend the guide no check. */
const LEAST = 0.01;

/**
 * All faults and facts, the tables of the pages its journeys can come to, those of hand-overs
 * among them, and the checks that find a fault which comes as one of those guides' complaints,
 * with their parts. Nothing that its journeys can tell is left out: shares are those of the whole.
 */
export function cutFor(model: Model, guide: Guide): Model {
  const guides = [guide.id, ...guidesOf(guide)] as readonly string[];
  const pages = new Set(
    [...guide.nodes.values()].flatMap(({ sentences }) => {
      const full = qualify(guide.id, sentences);
      return [full, full.slice(full.indexOf('/') + 1)];
    }),
  );
  const needed = (key: string) =>
    key === COMPLAINT || key === VISIT || key.startsWith(detailKey('')) || pages.has(key);
  const complaint = model.evidence.find(({ key }) => key === COMPLAINT);
  const own = new Set(
    model.faults.flatMap(({ id }, fault) => {
      const row = complaint && at(complaint.rows, at(complaint.rowOf, fault));
      const calls = complaint?.answers.filter((name) => guides.includes(name)) ?? [];
      return calls.some((name) => (row?.[complaint?.answers.indexOf(name) ?? -1] ?? 0) >= LEAST)
        ? id
        : [];
    }),
  );
  const finding = model.checks.filter(({ results }) =>
    results.some(({ pointsTo }) => pointsTo.some((fault) => own.has(fault))),
  );
  const ids = new Set(finding.map(({ id }) => id));
  // One waits for another where that other finds something here.
  const checks = finding.map((check) => ({
    ...check,
    after: check.after.filter((id) => ids.has(id)),
  }));
  const found = new Set(
    checks.flatMap(({ results }) => results.flatMap(({ pointsTo }) => pointsTo)),
  );
  const parts = new Set(model.faults.flatMap(({ id, parts: all }) => (found.has(id) ? all : [])));
  const withOthers = (id: AccessId): AccessId[] => {
    const { instead = {}, after = [] } = model.access.find((one) => one.id === id) ?? {};
    return [id, ...Object.values(instead), ...after.flatMap(withOthers)];
  };
  const opened = new Set(checks.flatMap(({ access }) => access.flatMap(withOthers)));
  return {
    ...model,
    guide: guide.id,
    evidence: model.evidence.filter(({ key }) => needed(key)),
    checks,
    access: model.access.filter(({ id }) => opened.has(id)),
    parts: model.parts.filter(({ id }) => parts.has(id)),
    fixedOrder: model.fixedOrder.filter((id) => ids.has(id)),
  };
}
