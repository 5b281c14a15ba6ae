import { defined } from '../defined.ts';
import { COMPLAINT, VISIT } from './evidence.ts';
import { at, scaled, sum } from './numbers.ts';
import type { CheckFile, FactFile, ModelFile, RowFile, TableFile } from './schema.ts';
import type { Check, Costs, EvidenceTable, Fact, Model, Rule } from './types.ts';

/** Of a fault's calls so many come as a complaint that its `calls` do not name, spread evenly. */
const ELSEWHERE = 0.02;
/** Hours from the call to the visit: the next day. */
const UNTIL_VISIT = 24;
/** What does not cure itself is still there at the visit, all but surely. */
const STAYS = 0.999;

/** Rows, with the row of each fault; the faults of no row have the default one, 0. */
interface Rows {
  readonly rows: readonly (readonly number[])[];
  readonly rowOf: readonly number[];
}

/**
 * The fault without `calls` stands for all that is not listed: it answers as the listed ones do
 * on the average, P(a | none) = Σ P(f) P(a | f) / Σ P(f). So no answer speaks for it or against
 * it by itself; it gains where every listed fault fits badly.
 */
function withMixture({ rows, rowOf }: Rows, file: ModelFile): Rows {
  const list = Object.values(file.faults);
  if (list.every(({ calls }) => calls)) return { rows, rowOf };
  const listed = list.flatMap(({ calls, prior }, fault) =>
    calls ? [{ prior, row: at(rows, at(rowOf, fault)) }] : [],
  );
  const mixture = at(rows, 0).map((_, answer) =>
    sum(listed.map(({ prior, row }) => prior * at(row, answer))),
  );
  return {
    rows: [...rows, scaled(mixture)],
    rowOf: rowOf.map((row, fault) => (at(list, fault).calls ? row : rows.length)),
  };
}

const unconditional = ({ faults, is, if: facts, given }: RowFile) =>
  faults !== undefined && !is && !facts && !given;

/** Rows sum to 1 within a rounding error; scaling removes the rest of it. */
function rowsOf({ default: first, rows }: TableFile | FactFile, file: ModelFile): Rows {
  const own = Object.keys(file.faults).map(
    (fault) => 1 + rows.findIndex((row) => unconditional(row) && row.faults?.includes(fault)),
  );
  return withMixture({ rows: [first, ...rows].map(({ p }) => scaled(p)), rowOf: own }, file);
}

function rulesOf({ about, rows }: TableFile, file: ModelFile): Rule[] {
  const faults = Object.keys(file.faults);
  const facts = Object.keys(file.facts);
  return [...rows.entries()].flatMap(([index, row]) => {
    if (unconditional(row)) return [];
    const named = { ...(about && row.is ? { [about]: row.is } : {}), ...row.if };
    const conditions = Object.entries(named).map(([name, values]) => {
      const all = file.facts[name]?.values ?? [];
      return [facts.indexOf(name), values.map((value) => all.indexOf(value))] as const;
    });
    return {
      row: 1 + index,
      ...defined({
        faults: row.faults?.map((fault) => faults.indexOf(fault)),
        if: conditions.length > 0 ? conditions : undefined,
        given: row.given ? Object.entries(row.given) : undefined,
      }),
    };
  });
}

function evidenceTable(key: string, table: TableFile, file: ModelFile): EvidenceTable {
  const rules = rulesOf(table, file);
  return {
    key,
    answers: table.answers,
    ...rowsOf(table, file),
    ...defined({
      rules: rules.length > 0 ? rules : undefined,
      supersedes: table.supersedes,
      told: table.told,
      tells: table.tells,
    }),
  };
}

/** P(complaint | fault): the guide that the caller's trouble led to. */
function complaints(file: ModelFile): EvidenceTable {
  const list = Object.values(file.faults);
  const guides = [...new Set(list.flatMap(({ calls = {} }) => Object.keys(calls)))].toSorted();
  const rows = list.map(({ calls = {} }) => {
    const named = sum(Object.values(calls));
    return scaled(
      guides.map(
        (guide) =>
          ELSEWHERE / guides.length + (1 - ELSEWHERE) * ((calls[guide] ?? 0) / (named || 1)),
      ),
    );
  });
  const own: Rows = { rows, rowOf: list.map((_, fault) => fault) };
  return { key: COMPLAINT, answers: guides, ...withMixture(own, file) };
}

/**
 * P(the visit is still needed | fault), as half of what cures itself is over after its hours h:
 * 2^(−24 / h). That somebody still waits for the technician is an observation like any other.
 */
function visits(file: ModelFile): EvidenceTable {
  const rows = Object.values(file.faults).map(({ passes }) => {
    const stays = passes === undefined ? STAYS : 2 ** (-UNTIL_VISIT / passes);
    return [stays, 1 - stays];
  });
  return { key: VISIT, answers: ['needed', 'passed'], rows, rowOf: rows.map((_, fault) => fault) };
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
    tools: check.tools,
    skills: check.skills,
    cautions: check.cautions,
    ...defined({ bench: check.bench, condemns: check.condemns }),
    after: check.after ?? [],
    results: Object.entries(check.results).map(([result, pointsTo]) => ({ id: result, pointsTo })),
    likelihoods: faults.map((fault) => resultRow(check, fault)),
  } as unknown as Check; // The one place where names become branded: all are cross-checked.
}

/** Where a second visit costs nothing, and so no part is worth carrying. */
export const NO_COSTS: Costs = { currency: 'XXX', secondVisit: 0, hourlyRate: 0, carrying: 0 };

/** A checked file, and the firm's costs, as the model that everything else reads. */
export function buildModel(file: ModelFile, costs: Costs = NO_COSTS): Model {
  const faults = Object.keys(file.faults);
  const priors = scaled(Object.values(file.faults).map(({ prior }) => prior));
  const list = Object.entries(file.faults);
  const places = Object.entries(file.places).flatMap(([place, ids]) =>
    ids.map((id) => [id, place] as const),
  );
  const placeOf = new Map(places);
  return {
    guide: '',
    source: file.source,
    faults: list.map(([id, { parts, calls }], index) => ({
      ...{ id, prior: at(priors, index), parts, ...defined({ place: placeOf.get(id) }) },
      ...(calls ? {} : { unlisted: true }),
    })),
    facts: Object.entries(file.facts).map(([id, one]): Fact => ({
      id,
      values: one.values,
      ...rowsOf(one, file),
    })),
    evidence: [
      complaints(file),
      ...Object.entries(file.observations).map(([key, one]) => evidenceTable(key, one, file)),
      visits(file),
    ],
    access: Object.entries(file.access).map(([id, one]) => ({ id, ...defined(one) })),
    checks: Object.entries(file.checks).map(([id, check]) => buildCheck(id, check, faults)),
    parts: Object.entries(file.parts).map(([id, part]) => ({ id, ...defined(part) })),
    costs,
    fixedOrder: Object.keys(file.checks),
  } as unknown as Model; // As above.
}
