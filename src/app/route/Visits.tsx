import { For, Show, createEffect, createMemo, createSignal, type JSX } from 'solid-js';
import { sayer } from '../shared/words.ts';
import type { LoadProps } from './props.ts';
import { breathe } from '../shared/breathe.ts';
import { createPrinting } from '../shared/printing.ts';
import { titleOf } from './facts.ts';
import type { Listed } from './state.ts';
import { TimeBar } from './TimeBar.tsx';
import { VisitRow } from './VisitRow.tsx';

/** Rows drawn at a time: some milliseconds' work. */
const ROWS = 10;
/** Up to so many visits every row is drawn in full. */
const SHORT = 40;

/** The visits in the day's order, which can be changed. */
export function Visits(props: LoadProps): JSX.Element {
  const t = sayer(props);
  const [drawn, setDrawn] = createSignal(ROWS);
  const printing = createPrinting();
  const [dragged, setDragged] = createSignal<number>();
  let list: HTMLElement | undefined;
  let title: HTMLElement | undefined;
  const visits = () => props.route.visits();
  const nameOf = (visit: Listed) => titleOf(props.page, visit, props.route.callerOf(visit));
  const shown = createMemo(() => visits().slice(0, drawn()));
  // A few rows at a time, so that a long route does not hold up the page.
  createEffect(() => {
    const more = drawn() + ROWS;
    if (drawn() < visits().length) void breathe().then(() => setDrawn(more));
  });
  /** Code → the first row it stands in. */
  const firsts = createMemo(() => {
    const rows = new Map<string, { id: number; row: number }>();
    for (const { id, row, code } of visits().toSorted((a, b) => a.id - b.id))
      if (code !== undefined && !rows.has(code)) rows.set(code, { id, row });
    return rows;
  });
  const last = createMemo(() => visits().length - 1);
  /** The place of the problem above that is the same visit's. */
  const goesWith = (visit: Listed, place: number): number | undefined => {
    const above = visits()[place - 1];
    const same = above && props.route.visitKey(above) === props.route.visitKey(visit);
    return same ? place : undefined;
  };
  const move = (id: number, to: number, by: 'up' | 'down' | 'drag'): void => {
    const visit = visits().find((one) => one.id === id);
    if (!visit || !props.route.move(id, to)) return;
    props.say(
      t('round:said.moved', { code: nameOf(visit), place: to + 1, count: visits().length }),
    );
    if (by === 'drag') return;
    const row = list?.querySelector(`[data-id="${String(id)}"]`);
    const way = row?.querySelector<HTMLButtonElement>(`.${by}:not([disabled])`);
    (
      way ?? row?.querySelector<HTMLButtonElement>('.up:not([disabled]), .down:not([disabled])')
    )?.focus();
    row?.scrollIntoView({ block: 'nearest' });
  };
  return (
    <>
      <Show when={props.route.gone()}>
        {(gone) => (
          <p class="undo">
            <button
              type="button"
              class="plain"
              onClick={() => {
                const code = nameOf(gone().visit);
                props.route.putBack();
                props.say(t('round:said.back', { code }));
                title?.focus();
              }}
            >
              {t('round:visits.undo', { code: nameOf(gone().visit) })}
            </button>
          </p>
        )}
      </Show>
      <Show when={visits().length > 0}>
        <section class="visits-of-round">
          <h2 id="visits-title" tabindex="-1" ref={(element) => (title = element)}>
            {t('round:visits.title', { count: visits().length })}
          </h2>
          <p class="ways order">
            <For each={['urgency', 'time'] as const}>
              {(by) => (
                <button
                  type="button"
                  class="plain"
                  onClick={() => {
                    props.route.sort(by);
                    props.say(t(`round:said.sorted.${by}`));
                  }}
                >
                  {t(`round:visits.sort.${by}`)}
                </button>
              )}
            </For>
            <span class="quiet">{t('round:visits.lead')}</span>
          </p>
          <TimeBar {...props} />
          <ol class="visits" ref={(element) => (list = element)}>
            <For each={shown()}>
              {(visit, place) => {
                const first = () => firsts().get(visit.code ?? '');
                return (
                  <VisitRow
                    {...props}
                    visit={visit}
                    place={place()}
                    last={place() === last()}
                    inFull={printing() || last() < SHORT}
                    goesWith={goesWith(visit, place())}
                    same={first()?.id === visit.id ? undefined : first()?.row}
                    onMove={(to, by) => move(visit.id, to, by)}
                    onDragStart={() => setDragged(visit.id)}
                    onDrop={() => {
                      const id = dragged();
                      setDragged(undefined);
                      if (id !== undefined) move(id, place(), 'drag');
                    }}
                    dragging={dragged() !== undefined}
                    onOut={() => {
                      props.say(t('round:said.out', { code: nameOf(visit) }));
                      props.route.takeOut(visit.id);
                      title?.focus();
                    }}
                  />
                );
              }}
            </For>
          </ol>
        </section>
      </Show>
    </>
  );
}
