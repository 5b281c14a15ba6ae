import { For, Show, createMemo, createSignal, type JSX } from 'solid-js';
import { hashOf } from '../../address/grammar.ts';
import { sayer } from '../shared/words.ts';
import { minutes, percent } from '../preview/facts.ts';
import { told } from './facts.ts';
import type { LoadProps } from './props.ts';
import type { Listed } from './state.ts';

interface Props extends LoadProps {
  readonly visit: Listed;
  /** Its place in the day, from 0. */
  readonly place: number;
  /** The row that has the same code, where another has. */
  readonly same: number | undefined;
  readonly dragging: boolean;
  onMove(to: number, by: 'up' | 'down'): void;
  onDragStart(): void;
  onDrop(): void;
  onOut(): void;
}

/** Shares below this are not worth a line. */
const LEFT_OVER = 0.05;

/** One visit: how urgent and why, flags, faults, time, parts, and its place in the day. */
export function VisitRow(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const said = createMemo(() => told(props.page, props.visit, props.load));
  const [over, setOver] = createSignal(false);
  let row: HTMLLIElement | undefined;
  const code = () => props.visit.code;
  return (
    <li
      class="card visit"
      classList={{ over: over() }}
      data-id={props.visit.id}
      data-urgency={props.visit.seen.urgency}
      ref={(element) => (row = element)}
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
      <div class="head">
        <span
          class="number"
          draggable="true"
          onDragStart={(event) => {
            if (row) event.dataTransfer?.setDragImage(row, 0, 0);
            event.dataTransfer?.setData('text/plain', code());
            props.onDragStart();
          }}
        >
          {props.place + 1}
        </span>
        <h3>
          <bdi class="typed">{code()}</bdi>
        </h3>
        <span class="moves">
          <button
            type="button"
            class="plain up"
            aria-label={t('round:visits.up', { code: code() })}
            disabled={props.place === 0}
            onClick={() => props.onMove(props.place - 1, 'up')}
          >
            ↑
          </button>
          <button
            type="button"
            class="plain down"
            aria-label={t('round:visits.down', { code: code() })}
            disabled={props.place === props.route.visits().length - 1}
            onClick={() => props.onMove(props.place + 1, 'down')}
          >
            ↓
          </button>
        </span>
      </div>
      <p class="urgency">{said().urgency}</p>
      <p class="quiet">{said().reason}</p>
      <Show when={props.same}>
        {(same) => <p class="strong">{t('round:visits.same', { row: same() })}</p>}
      </Show>
      <Show when={said().flags.length > 0}>
        <h4>{t('round:visits.flags')}</h4>
        <ul class="flags">
          <For each={said().flags}>{(flag) => <li>{flag}</li>}</For>
        </ul>
      </Show>
      <Show
        when={props.visit.assessed}
        fallback={
          <Show when={!props.visit.seen.model}>
            <p class="quiet">{t('preview:ranking.none')}</p>
          </Show>
        }
      >
        {(figures) => (
          <>
            <p class="strong">
              {t('round:visits.minutes', {
                expected: minutes(words(), figures().expected),
                cautious: minutes(words(), figures().cautious),
              })}
            </p>
            <Show when={figures().leftOver > LEFT_OVER}>
              <p class="quiet">
                {t('round:visits.leftOver', { share: percent(words(), figures().leftOver) })}
              </p>
            </Show>
            <div class="lists">
              <div>
                <h4>{t('round:visits.faults')}</h4>
                <ul>
                  <For each={said().faults}>{(fault) => <li>{fault}</li>}</For>
                </ul>
              </div>
              <div>
                <h4>{t('round:visits.parts')}</h4>
                <ul>
                  <For each={said().parts} fallback={<li>{t('round:visits.noParts')}</li>}>
                    {(part) => <li>{part}</li>}
                  </For>
                </ul>
              </div>
            </div>
          </>
        )}
      </Show>
      <Passthrough {...props} />
      <p class="ways foot">
        <a
          class="button plain"
          href={`../preview/${hashOf({ c: code() })}`}
          target="_blank"
          aria-label={t('round:visits.openOf', { code: code() })}
        >
          {t('round:visits.open')}
        </a>
        <button
          type="button"
          class="plain"
          aria-label={t('round:visits.outOf', { code: code() })}
          onClick={() => props.onOut()}
        >
          {t('round:visits.out')}
        </button>
      </p>
    </li>
  );
}

/** The columns the visit came with. */
function Passthrough(props: Pick<Props, 'route' | 'visit'>): JSX.Element {
  const cells = () =>
    props.route
      .columns()
      .map((column, index) => [column, props.visit.others[index] ?? ''] as const)
      .filter(([, cell]) => cell.trim() !== '');
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
