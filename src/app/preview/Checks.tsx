import { For, Show, createMemo, createSignal, type JSX } from 'solid-js';
import { doorStep, openingFor, type DoorStep, type PlanStep } from '../../diagnosis/plan.ts';
import type { Check } from '../../diagnosis/types.ts';
import { checkSteps, name, names, resultName } from '../shared/staff-words.ts';
import { painted } from '../shared/breathe.ts';
import { sayer } from '../shared/words.ts';
import { Pairs } from './Pairs.tsx';
import { minutes } from './facts.ts';
import { odds } from './odds.ts';
import type { Page } from './page.ts';
import type { Tap } from './taps.ts';
import type { ProblemState, VisitState } from './visit.ts';
import { checkIn } from './work.ts';

interface Props {
  readonly page: Page;
  readonly visit: VisitState;
  /** Nobody counts minutes for a range that others must release first. */
  readonly timed: boolean;
}

/** Checks in sight at once. */
const IN_SIGHT = 4;
/** Less than this is rounding, not a fault that no check finds. */
const WORTH_SAYING = 0.005;

/**
 * The order of checks with the fewest expected minutes, made anew after each result. One check is
 * open at a time; after a result it is the next one.
 */
export function Checks(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  let heading: HTMLHeadingElement | undefined;
  const steps = createMemo(
    () => new Map<string, PlanStep>(props.visit.steps().map((step) => [step.check, step])),
  );
  const order = () => [...steps().keys()];
  /** Checks that this order never comes to; a technician may make them all the same. */
  const beside = () => {
    const all = props.visit.problems.flatMap(({ model }) => model.checks.map(({ id }) => id));
    const done = props.visit.taps().map(({ check }) => check);
    return [...new Set<string>(all)].filter((id) => !steps().has(id) && !done.includes(id));
  };
  /** The problem that the next check is for; where none is left the first. */
  const now = () => checkIn(props.visit.problems, order()[0] ?? '')?.of ?? props.visit.problems[0];
  const started = () => props.visit.taps().length > 0;
  const [open, setOpen] = createSignal(started() ? order()[0] : undefined);
  /** The check that shows what holds for all of them; on the others it is folded. */
  const [safety, setSafety] = createSignal(started() ? '' : undefined);
  /** Made only when they are looked at: each result orders them anew. */
  const [more, setMore] = createSignal(false);
  const moved = () => {
    setOpen(started() ? order()[0] : undefined);
    // What was pressed has moved or is gone.
    heading?.focus({ preventScroll: true });
    heading?.scrollIntoView({ block: 'start' });
  };
  const take = async (tap: Tap): Promise<void> => {
    // The check folds at once; then all is ranked and ordered anew.
    setOpen();
    await painted();
    props.visit.tap(tap);
    moved();
  };
  const cards = (ids: readonly string[]) => (
    <For each={ids}>
      {(id) => (
        <Show when={checkIn(props.visit.problems, id)}>
          {(found) => (
            <CheckCard
              {...props}
              check={found().check}
              problem={found().of}
              step={steps().get(id)}
              open={open() === id}
              safetyOpen={safety() === id}
              onToggle={(now) => {
                if (now) setSafety((before) => before ?? id);
                if (now || open() === id) setOpen(now ? id : undefined);
              }}
              onResult={(result) => void take({ check: id, result })}
            />
          )}
        </Show>
      )}
    </For>
  );
  const door = () =>
    props.visit.problems.flatMap(({ model, evidence }) => doorStep(model, evidence()) ?? [])[0];
  const leftOver = () => now()?.plan().leftOver ?? 0;
  const told = () => {
    const [first] = now()?.ranking() ?? [];
    const [next] = order();
    if (!started() || !first) return '';
    const likeliest = t('preview:plan.likeliest', {
      fault: name(words(), 'faults', first.fault),
      odds: odds(words(), first.share),
    });
    const then =
      next === undefined
        ? t('preview:plan.allDone')
        : t(now()?.plan().ruledIn.length ? 'preview:plan.otherwise' : 'preview:plan.next', {
            check: name(words(), 'checks', next),
          });
    return `${likeliest} ${then}`;
  };
  return (
    <section class="card plan">
      <h2 tabindex="-1" ref={(element) => (heading = element)}>
        {t('preview:plan.title')}
      </h2>
      <p class="now strong" aria-live="polite">
        {told()}
      </p>
      <ol class="checks">{cards(order().slice(0, IN_SIGHT))}</ol>
      <Show when={door()}>{(step) => <Release {...props} door={step()} order={order()} />}</Show>
      <Show when={order().length + beside().length > IN_SIGHT}>
        <details class="more" onToggle={(event) => setMore(event.currentTarget.open)}>
          <summary>
            {t('preview:plan.later', { count: order().length + beside().length - IN_SIGHT })}
          </summary>
          <Show when={more()}>
            <ol class="checks" start={IN_SIGHT + 1}>
              {cards(order().slice(IN_SIGHT))}
            </ol>
            <ul class="checks">{cards(beside())}</ul>
          </Show>
        </details>
      </Show>
      <Done {...props} onUndo={moved} />
      <Show when={started() && leftOver() > WORTH_SAYING}>
        <p class="quiet">{t('preview:plan.leftOver', { odds: odds(words(), leftOver()) })}</p>
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
    <details class="check release">
      <summary>
        <span class="title">{t('diagnosis:release.title')}</span>{' '}
        <Show when={props.timed}>
          <span class="quiet">{minutes(words(), props.door.minutes)}</span>
        </Show>
      </summary>
      <ol class="how">
        <For each={words().list('diagnosis:release.how')}>{(line) => <li>{line}</li>}</For>
      </ol>
      <Show when={before().length > 0}>
        <p>{t('diagnosis:release.before', { checks: names(words(), 'checks', before()) })}</p>
      </Show>
    </details>
  );
}

/** What a check needs opened on a range like this. */
const opened = ({ problem: { model, evidence }, check }: Pick<CardProps, 'problem' | 'check'>) =>
  openingFor(model, evidence())(check);

/** A check's own cautions, and those of what it needs opened. */
function cautionsOf({ problem, check }: Pick<CardProps, 'problem' | 'check'>): string[] {
  const { access } = problem.model;
  const ofAccess = opened({ problem, check }).flatMap(
    (id) => access.find((one) => one.id === id)?.cautions ?? [],
  );
  return [...new Set([...check.cautions, ...ofAccess])];
}

interface CardProps extends Props {
  readonly check: Check;
  /** Whose figures tell of it. */
  readonly problem: ProblemState;
  /** Its place in the order; none for a check the order does not come to. */
  readonly step: PlanStep | undefined;
  readonly open: boolean;
  readonly safetyOpen: boolean;
  onToggle(open: boolean): void;
  onResult(result: string): void;
}

/** One check: in a line what it takes, opened how to make it and a button for each result. */
function CheckCard(props: CardProps): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const opens = () => props.step?.opens ?? [];
  const takes = () => [
    ...(props.timed ? [minutes(words(), props.step?.minutes ?? props.check.minutes)] : []),
    ...(opens().length > 0 ? [names(words(), 'access', opens())] : []),
    ...(props.step ? [] : [t('preview:plan.beside')]),
  ];
  return (
    <li>
      <details
        class="check"
        open={props.open}
        onToggle={(event) => props.onToggle(event.currentTarget.open)}
      >
        <summary>
          <span class="title">{name(words(), 'checks', props.check.id)}</span>{' '}
          <span class="quiet">{takes().join(' · ')}</span>
        </summary>
        <Show when={props.open}>
          <details class="care" open={props.safetyOpen}>
            <summary>{t('preview:plan.safety')}</summary>
            <ul>
              <For each={words().list('diagnosis:everyCheck')}>{(line) => <li>{line}</li>}</For>
            </ul>
          </details>
          <Show when={cautionsOf(props).length > 0}>
            <ul class="care">
              <For each={cautionsOf(props)}>
                {(caution) => <li>{name(words(), 'cautions', caution)}</li>}
              </For>
            </ul>
          </Show>
          <ol class="how">
            <For each={checkSteps(words(), props.check.id)}>{(line) => <li>{line}</li>}</For>
          </ol>
          <Show when={props.check.bench === 'sensor'}>
            <p>
              <a href="../bench/">{t('preview:plan.bench')}</a>
            </p>
          </Show>
          <h3>{t('preview:plan.results')}</h3>
          <ul class="results">
            <For each={props.check.results}>
              {({ id, pointsTo }) => (
                <li>
                  <button type="button" class="plain" onClick={() => props.onResult(id)}>
                    <span>{resultName(words(), props.check.id, id)}</span>
                    <span class="quiet">
                      {pointsTo.length === 0
                        ? t('preview:plan.clear')
                        : names(words(), 'faults', pointsTo)}
                    </span>
                  </button>
                </li>
              )}
            </For>
          </ul>
          <Needs {...props} />
        </Show>
      </details>
    </li>
  );
}

function Needs(props: CardProps): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const rows = () => {
    const { tools, skills, reading, condemns } = props.check;
    return [
      ['reading', words().t(`diagnosis:reading.${reading}`)],
      ['access', names(words(), 'access', opened(props))],
      ['tools', names(words(), 'tools', tools)],
      ['skills', names(words(), 'skills', skills)],
      ['condemns', condemns === undefined ? '' : name(words(), 'parts', condemns)],
    ] as const;
  };
  return (
    <Pairs
      rows={rows()
        .filter(([, text]) => text !== '')
        .map(([row, text]) => [t(`preview:plan.${row}`), text])}
    />
  );
}

function Done(props: Props & { onUndo(): void }): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const found = () =>
    props.visit.problems.flatMap(({ plan, ranking }) =>
      plan().ruledIn.map((fault) => ranking().find((one) => one.fault === fault)),
    );
  return (
    <Show when={props.visit.taps().length > 0}>
      <div class="done">
        <Show when={found().length > 0}>
          <h3>{t('preview:plan.found')}</h3>
          <ul class="found">
            <For each={found()}>
              {(one) => (
                <li>
                  {name(words(), 'faults', one?.fault ?? '')}, {odds(words(), one?.share ?? 0)}
                </li>
              )}
            </For>
          </ul>
        </Show>
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
      </div>
    </Show>
  );
}
