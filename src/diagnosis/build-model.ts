import { defined } from '../defined.ts';
import { at, scaled, sum } from './numbers.ts';
import type { CheckFile, FaultsFile, TableFile } from './schema.ts';
import type { Check, EvidenceTable, Model } from './types.ts';

/** The index of the row that speaks for a fault: 0 is the default, later rows follow the file. */
function rowIndex(rows: readonly { readonly faults: readonly string[] }[], fault: string): number {
  return 1 + rows.findIndex(({ faults }) => faults.includes(fault));
}

function evidenceTable(key: string, table: TableFile, faults: readonly string[]): EvidenceTable {
  return {
    key,
    answers: table.answers,
    // Rows sum to 1 within a rounding error; this removes the rest of it.
    rows: [table.default, ...table.rows].map(({ p }) => scaled(p)),
    rowOf: faults.map((fault) => rowIndex(table.rows, fault)),
  };
}

/**
 * P(result | fault) of a check. A fault the check can find gives one of the
 * results that rule it in with probability `catches`, shared equally; results
 * that rule in other faults only share `false-alarms` equally, as they do for
 * faults the check cannot find; what is left is the result that finds nothing wrong.
 */
export function resultRow(check: CheckFile, fault: string): number[] {
  const override = check.rows?.find(({ faults }) => faults.includes(fault));
  if (override) return scaled(override.p);
  const results = Object.values(check.results);
  const bad = results.filter((points) => points.length > 0).length;
  const finding = results.filter((points) => points.includes(fault)).length;
  const row = results.map((points) => {
    if (points.length === 0) return 0;
    return points.includes(fault) ? check.catches / finding : check['false-alarms'] / bad;
  });
  const clear = 1 - sum(row);
  return results.map((points, index) => (points.length === 0 ? clear : at(row, index)));
}

function buildCheck(id: string, check: CheckFile, faults: readonly string[]): Check {
  return {
    id,
    minutes: check.minutes,
    access: check.access,
    reading: check.reading,
    provedDead: check['proved-dead'],
    wiresOff: check['wires-off'],
    tools: check.tools,
    skills: check.skills,
    cautions: check.cautions,
    ...defined({ bench: check.bench, condemns: check.condemns }),
    after: check.after ?? [],
    results: Object.entries(check.results).map(([result, pointsTo]) => ({ id: result, pointsTo })),
    likelihoods: faults.map((fault) => resultRow(check, fault)),
  } as unknown as Check; // The one place where names become branded: all are cross-checked.
}

/** A checked file as the model that everything else reads. */
export function buildModel(file: FaultsFile): Model {
  const faults = Object.keys(file.faults);
  const priors = scaled(Object.values(file.faults).map(({ prior }) => prior));
  const list = Object.entries(file.faults);
  return {
    guide: file.guide,
    source: file.source,
    faults: list.map(([id, { parts }], index) => ({ id, prior: at(priors, index), parts })),
    evidence: Object.entries(file.evidence).map(([key, one]) => evidenceTable(key, one, faults)),
    access: Object.entries(file.access).map(([id, { minutes }]) => ({ id, minutes })),
    checks: Object.entries(file.checks).map(([id, check]) => buildCheck(id, check, faults)),
    parts: Object.entries(file.parts).map(([id, { cost }]) => ({ id, cost })),
    fixedOrder: file['fixed-order'],
  } as unknown as Model; // As above.
}
