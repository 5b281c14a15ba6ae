/** Machines given to the model checker SPIN (G. Holzmann; Debian's package `spin`), which compiles with gcc. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spinProgram } from '../../.config/browsers.ts';
import { BREAKER, conditions, effect } from './check.ts';
import type { Machine } from './machine.ts';

/**
 * The one process, in PROMELA: `n` is the page, the machines' pages in a row after 0; `f` is all that
 * was told and how often the breaker was worked; `a` chooses an answer. An assertion fails where a
 * page comes in a state that it must not come in.
 */
const WALK = `c_decl { \\#include "guides.h" }
int n, f, a;
bit wrong;
active proctype walk() {
end: do
  :: atomic {
    c_expr { begins[now.n] < begins[now.n + 1] } -> c_code { now.a = begins[now.n]; };
    do :: c_expr { now.a + 1 < begins[now.n + 1] } -> a++ :: break od;
    c_code { now.f = after(now.n, now.f, now.a); now.n = to[now.a]; now.a = 0; now.wrong = bad(now.n, now.f); };
    assert(!wrong);
  }
  od
}
`;

/** The machines as tables of C, which compile ten times as fast as an option for each answer. */
function tablesOf(machines: readonly Machine[]): string {
  // Page 0 chooses a machine.
  const places = machines.flatMap((machine) => machine.places);
  const starts = machines.map((_, index) =>
    machines.slice(0, index).reduce((sum, one) => sum + one.places.length, 1),
  );
  const arcs = [
    ...starts.map((to) => ({ to, takes: 0, adds: 0 })),
    ...machines.flatMap((machine, index) =>
      machine.places.flatMap((place) =>
        place.arcs.map((arc) => ({ to: arc.to + (starts[index] ?? 0), ...effect(place, arc) })),
      ),
    ),
  ];
  const begins = [0, starts.length];
  for (const place of places) begins.push((begins.at(-1) ?? 0) + place.arcs.length);
  const asked = places.flatMap((place, index) =>
    conditions(place).map(({ needs, forbids }) => ({ at: index + 1, needs, forbids })),
  );
  const table = (name: string, values: readonly number[]): string =>
    `static const int ${name}[] = { ${values.join()} };\n`;
  const columns = <T extends string>(rows: readonly Readonly<Record<T, number>>[], names: T[]) =>
    names
      .map((name) =>
        table(
          name,
          rows.map((row) => row[name]),
        ),
      )
      .join('');
  return `${table('begins', begins)}${columns(arcs, ['to', 'takes', 'adds'])}
${table('worked', [0, ...places.map(({ action }) => (action === 'breaker' ? BREAKER : 0))])}
${columns(asked, ['at', 'needs', 'forbids'])}
static int bad(int n, int f) {
  for (int i = 0; i < ${String(asked.length)}; i++)
    if (at[i] == n && ((f & needs[i]) != needs[i] || (f & forbids[i]))) return 1;
  return 0;
}
static int after(int n, int f, int a) {
  return ((f & ~takes[a]) | adds[a]) + (f < ${String(3 * BREAKER)} ? worked[n] : 0);
}
`;
}

/** What SPIN finds over every state of machines; `states` is known where there are no errors. */
export function spin(machines: readonly Machine[]): { errors: number; states: number } {
  const cwd = mkdtempSync(join(tmpdir(), 'spin-'));
  const run = (command: string, ...args: string[]): string =>
    execFileSync(command, args, { cwd, encoding: 'utf8' });
  try {
    writeFileSync(join(cwd, 'guides.pml'), WALK);
    writeFileSync(join(cwd, 'guides.h'), tablesOf(machines));
    run(spinProgram(), '-a', 'guides.pml');
    // No reduction: the states are to be counted, not only searched.
    run('gcc', '-w', '-DSAFETY', '-DNOREDUCE', '-o', 'pan', 'pan.c');
    const said = run(join(cwd, 'pan'), '-m100000');
    const [errors, states] = [/errors: (\d+)/, /(\d+) states, stored/].map((one) =>
      Number(one.exec(said)?.[1]),
    );
    // Where a machine is chosen is a state of no guide.
    return { errors: errors ?? NaN, states: (states ?? NaN) - 1 };
  } finally {
    rmSync(cwd, { recursive: true });
  }
}
