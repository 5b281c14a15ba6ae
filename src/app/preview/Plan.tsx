import { For, Show, createMemo, type JSX } from 'solid-js';
import { doorStep, type DoorStep, type PlanStep } from '../../diagnosis/plan.ts';
import type { Check } from '../../diagnosis/types.ts';
import { CheckCard } from './CheckCard.tsx';
import { Routes } from './Routes.tsx';
import { name, names, resultName } from '../shared/staff-words.ts';
import { minutes, percent } from './facts.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';
import type { DiagnosisState } from './visit.ts';

interface Props {
  readonly page: Page;
  readonly visit: DiagnosisState;
}

/** Checks shown without opening anything. */
const MOST_SHOWN = 6;
/** Less than this is rounding, not a fault that no check finds. */
const WORTH_SAYING = 0.005;

/** The order of checks with the least expected minutes, made anew after each result. */
export function Plan(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  let heading: HTMLHeadingElement | undefined;
  const plan = () => props.visit.plan();
  const steps = createMemo(
    () => new Map<string, PlanStep>(plan().best.steps.map((step) => [step.check, step])),
  );
  const order = () => [...steps().keys()];
  /** Checks that this order never comes to; a technician may make them all the same. */
  const beside = () =>
    props.visit.model.checks
      .map(({ id }): string => id)
      .filter((id) => !steps().has(id) && !props.visit.taps().some(({ check }) => check === id));
  const checkOf = (id: string) => props.visit.model.checks.find((one) => one.id === id);
  const back = () => {
    // What was pressed has moved or is gone.
    heading?.focus({ preventScroll: true });
    heading?.scrollIntoView({ block: 'start' });
  };
  const cards = (ids: readonly string[]) => (
    <For each={ids}>
      {(id) => (
        <li>
          <Show when={checkOf(id)}>
            {(check: () => Check) => (
              <CheckCard
                page={props.page}
                visit={props.visit}
                check={check()}
                step={steps().get(id)}
                onResult={(result) => {
                  props.visit.tap({ check: id, result });
                  back();
                }}
              />
            )}
          </Show>
        </li>
      )}
    </For>
  );
  const now = () => {
    const [first] = props.visit.ranking();
    const [next] = order();
    if (!first) return '';
    const likeliest = t('preview:plan.likeliest', {
      fault: name(words(), 'faults', first.fault),
      share: percent(words(), first.share),
    });
    const then =
      next === undefined
        ? t('preview:plan.allDone')
        : t(plan().ruledIn.length > 0 ? 'preview:plan.otherwise' : 'preview:plan.next', {
            check: name(words(), 'checks', next),
          });
    return `${likeliest} ${then}`;
  };
  return (
    <section class="plan">
      <h2 tabindex="-1" ref={(element) => (heading = element)}>
        {t('preview:plan.title')}
      </h2>
      <p class="quiet">{t('preview:plan.lead')}</p>
      <Done {...props} onUndo={back} />
      <p class="now strong" aria-live="polite">
        {now()}
      </p>
      <Show when={order().length > 0}>
        <Routes page={props.page} plan={plan()} />
      </Show>
      <Show when={doorStep(props.visit.model, props.visit.evidence())}>
        {(door) => <Release {...props} door={door()} order={order()} />}
      </Show>
      <ol class="checks">{cards(order().slice(0, MOST_SHOWN))}</ol>
      <Show when={order().length > MOST_SHOWN}>
        <details class="more">
          <summary>{t('preview:plan.later', { count: order().length - MOST_SHOWN })}</summary>
          <ol class="checks" start={MOST_SHOWN + 1}>
            {cards(order().slice(MOST_SHOWN))}
          </ol>
        </details>
      </Show>
      <Show when={beside().length > 0}>
        <details class="more">
          <summary>{t('preview:plan.beside', { count: beside().length })}</summary>
          <ul class="checks">{cards(beside())}</ul>
        </details>
      </Show>
      <Show when={plan().leftOver > WORTH_SAYING}>
        <p class="quiet">
          {t('preview:plan.leftOver', { share: percent(words(), plan().leftOver) })}
        </p>
      </Show>
    </section>
  );
}

/** How to get a locked door open: what the repair needs first, whatever the checks find. */
function Release(props: Props & { door: DoorStep; order: readonly string[] }): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const before = () => props.door.before.filter((id) => props.order.includes(id));
  return (
    <details class="card release">
      <summary>
        <span class="title">{t('diagnosis:release.title')}</span>{' '}
        <span class="quiet">{minutes(words(), props.door.minutes)}</span>
      </summary>
      <ol>
        <For each={words().list('diagnosis:release.how')}>{(line) => <li>{line}</li>}</For>
      </ol>
      <Show when={before().length > 0}>
        <p>{t('diagnosis:release.before', { checks: names(words(), 'checks', before()) })}</p>
      </Show>
    </details>
  );
}

function Done(props: Props & { onUndo(): void }): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const found = () => props.visit.plan().ruledIn;
  return (
    <Show when={props.visit.taps().length > 0}>
      <div class="card done">
        <h3>{t('preview:plan.done')}</h3>
        <ul>
          <For each={props.visit.taps()}>
            {({ check, result }) => (
              <li>
                <span>
                  {name(words(), 'checks', check)}:{' '}
                  <strong>{resultName(words(), check, result)}</strong>
                </span>
                <button
                  type="button"
                  class="plain"
                  aria-label={t('preview:plan.undoCheck', {
                    check: name(words(), 'checks', check),
                  })}
                  onClick={() => {
                    props.visit.undo(check);
                    props.onUndo();
                  }}
                >
                  {t('preview:plan.undo')}
                </button>
              </li>
            )}
          </For>
        </ul>
        <Show when={found().length > 0}>
          <p class="strong">{t('preview:plan.found')}</p>
          <ul class="found">
            <For each={found()}>
              {(fault) => (
                <li>
                  {name(words(), 'faults', fault)}:{' '}
                  {percent(
                    words(),
                    props.visit.ranking().find((one) => one.fault === fault)?.share ?? 0,
                  )}
                </li>
              )}
            </For>
          </ul>
        </Show>
      </div>
    </Show>
  );
}
