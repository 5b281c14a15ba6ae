import { For, Show, createMemo, createSignal, type JSX } from 'solid-js';
import { hashOf } from '../../address/grammar.ts';
import { CopyJob } from '../shared/CopyJob.tsx';
import { sayer } from '../shared/words.ts';
import { minutes, percent } from '../preview/facts.ts';
import { titleOf, told, wordsOf } from './facts.ts';
import type { LoadProps } from './props.ts';
import type { Listed } from './state.ts';

interface Props extends LoadProps {
  readonly visit: Listed;
  /** Its place in the day, from 0. */
  readonly place: number;
  /** The place of another problem of the same visit, where that stands above. */
  readonly goesWith: number | undefined;
  /** The row that has the same code, where another has. */
  readonly same: number | undefined;
  readonly last: boolean;
  readonly dragging: boolean;
  /** Drawn in full wherever it stands, not only near what is looked at. */
  readonly inFull: boolean;
  onMove(to: number, by: 'up' | 'down'): void;
  onDragStart(): void;
  onDrop(): void;
  onOut(): void;
}

/** Shares below this are not worth a line. */
const LEFT_OVER = 0.05;

/** Whether the browser says which rows it leaves undrawn (CSS Containment Level 2). */
const SAYS = 'oncontentvisibilityautostatechange' in HTMLElement.prototype;

/**
 * One visit: when and where, how urgent and why, what to expect, and its place in the day. Of a long
 * route's rows that nobody looks at only what they are searched by is there.
 */
export function VisitRow(props: Props): JSX.Element {
  const t = sayer(props);
  const [over, setOver] = createSignal(false);
  const [more, setMore] = createSignal(false);
  const [near, setNear] = createSignal(!SAYS);
  let row: HTMLLIElement | undefined;
  const title = () => titleOf(props.page, props.visit, caller());
  const caller = () => props.route.callerOf(props.visit);
  const found = () => [props.place + 1, ...Object.values(caller()), props.visit.code];
  const coded = () => {
    const { code, seen } = props.visit;
    return code && seen ? { code, seen } : undefined;
  };
  return (
    <li
      class="card visit"
      classList={{ over: over(), whole: more() }}
      data-id={props.visit.id}
      data-urgency={props.visit.seen?.urgency ?? 'open'}
      ref={(element) => {
        row = element;
        element.addEventListener('contentvisibilityautostatechange', (event) =>
          setNear(!(event as ContentVisibilityAutoStateChangeEvent).skipped),
        );
      }}
      onDragOver={(event) => {
        if (!props.dragging) return;
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        setOver(false);
        event.preventDefault();
        props.onDrop();
      }}
    >
      <Show
        when={props.inFull || near()}
        fallback={<p class="found">{found().filter(Boolean).join(' ')}</p>}
      >
        <div class="head">
          <span
            class="number"
            draggable="true"
            onDragStart={(event) => {
              if (row) event.dataTransfer?.setDragImage(row, 0, 0);
              event.dataTransfer?.setData('text/plain', title());
              props.onDragStart();
            }}
          >
            {props.place + 1}
          </span>
          <Who {...props} />
          <span class="moves">
            <button
              type="button"
              class="plain up"
              aria-label={t('round:visits.up', { code: title() })}
              disabled={props.place === 0}
              onClick={() => props.onMove(props.place - 1, 'up')}
            >
              ↑
            </button>
            <button
              type="button"
              class="plain down"
              aria-label={t('round:visits.down', { code: title() })}
              disabled={props.last}
              onClick={() => props.onMove(props.place + 1, 'down')}
            >
              ↓
            </button>
          </span>
        </div>
        <div class="expect">
          <Show when={props.goesWith}>
            {(place) => <p class="strong">{t('round:visits.with', { place: place() })}</p>}
          </Show>
          <Show when={props.same}>
            {(same) => <p class="strong">{t('round:visits.same', { row: same() })}</p>}
          </Show>
          <Expected {...props} />
        </div>
        <button
          type="button"
          class="plain more"
          aria-expanded={more()}
          aria-label={t('round:visits.moreOf', { code: title() })}
          onClick={() => setMore(!more())}
        >
          {t('round:visits.more')}
        </button>
        <div class="rest" classList={{ shut: !more() }}>
          <Rest {...props} />
          <p class="ways foot">
            <Show when={props.visit.code}>
              {(code) => (
                <a
                  class="button plain"
                  href={`../preview/${hashOf({ c: code() })}`}
                  target="_blank"
                  aria-label={t('round:visits.openOf', { code: title() })}
                >
                  {t('round:visits.open')}
                </a>
              )}
            </Show>
            <Show when={coded()}>
              {(visit) => (
                <CopyJob
                  page={{ words: wordsOf(props.page, props.visit) }}
                  problems={[visit()]}
                  caller={caller()}
                />
              )}
            </Show>
            <button
              type="button"
              class="plain"
              aria-label={t('round:visits.outOf', { code: title() })}
              onClick={() => props.onOut()}
            >
              {t('round:visits.out')}
            </button>
          </p>
        </div>
      </Show>
    </li>
  );
}

type OfVisit = LoadProps & Pick<Props, 'visit'>;

/** When, who and where, and how urgent. */
export function Who(props: OfVisit): JSX.Element {
  const caller = () => props.route.callerOf(props.visit);
  const said = createMemo(() => told(props.page, props.visit, props.load));
  const title = () => titleOf(props.page, props.visit, caller());
  return (
    <div class="who">
      <p class="urgency">{said().urgency}</p>
      <Show when={caller().time}>
        <p class="when">
          <bdi>{caller().time}</bdi>
        </p>
      </Show>
      <h3>
        <bdi classList={{ typed: title() === props.visit.code }}>{title()}</bdi>
      </h3>
      <p>
        <bdi>{caller().address === title() ? '' : caller().address}</bdi>{' '}
        <Show when={caller().phone}>
          {(phone) => (
            <a href={`tel:${phone().replaceAll(/[^+\d]/g, '')}`}>
              <bdi>{phone()}</bdi>
            </a>
          )}
        </Show>
      </p>
    </div>
  );
}

/** What the code says and what to expect. An emergency is not planned for. */
export function Expected(props: OfVisit): JSX.Element {
  const t = sayer(props);
  const said = createMemo(() => told(props.page, props.visit, props.load));
  const line = (label: string, list: readonly string[]) => (
    <Show when={list.length > 0}>
      <p class="of">
        <span class="quiet">{label}:</span> {list.join('; ')}
      </p>
    </Show>
  );
  const emergency = () => props.visit.seen?.urgency === 'emergency';
  return (
    <>
      <p>
        <strong>{said().what}</strong> <span class="quiet reason">{said().reason}</span>
      </p>
      {line(t('job:lines.error'), [props.visit.seen?.note.error ?? ''].filter(Boolean))}
      <Show when={said().flags.length > 0}>
        <ul class="flags" aria-label={t('round:visits.flags')}>
          <For each={said().flags}>{(flag) => <li>{flag}</li>}</For>
        </ul>
      </Show>
      <Show when={emergency()}>
        <p class="strong">{t('round:visits.held')}</p>
      </Show>
      <Show when={props.visit.seen && !emergency() && !props.visit.assessed}>
        <p class="quiet">{t('preview:ranking.none')}</p>
      </Show>
      {line(t('round:visits.faults'), said().faults)}
      {line(t('round:visits.parts'), said().parts)}
    </>
  );
}

/** The time it may take, and what the list said beside. */
export function Rest(props: OfVisit): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  return (
    <>
      <Show when={props.visit.assessed}>
        {(figures) => (
          <p class="quiet">
            {t('round:visits.minutes', {
              expected: minutes(words(), figures().expected),
              cautious: minutes(words(), figures().cautious),
            })}{' '}
            {figures().leftOver > LEFT_OVER
              ? t('round:visits.leftOver', { share: percent(words(), figures().leftOver) })
              : ''}
          </p>
        )}
      </Show>
      <Passthrough {...props} />
    </>
  );
}

/** Shown at the head of a visit. */
const atHead = ['time', 'name', 'phone', 'address'] as const;

/** The code, and the columns the visit came with, but for those at its head. */
function Passthrough(props: OfVisit): JSX.Element {
  const t = sayer(props);
  const cells = (): (readonly [string, string])[] => {
    const head = new Set(atHead.map((field) => props.route.known().get(field)));
    const { code, others } = props.visit;
    return [
      ...(code === undefined ? [] : [[t('job:lines.code'), code] as const]),
      ...props.route
        .columns()
        .map((column, index) => [column, head.has(index) ? '' : (others[index] ?? '')] as const),
    ].filter(([, cell]) => cell.trim() !== '');
  };
  return (
    <Show when={cells().length > 0}>
      <dl class="carried">
        <For each={cells()}>
          {([column, cell]) => (
            <div>
              <dt>
                <bdi>{column}</bdi>
              </dt>
              <dd>
                <bdi>{cell}</bdi>
              </dd>
            </div>
          )}
        </For>
      </dl>
    </Show>
  );
}
