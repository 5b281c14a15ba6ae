import { For, Show, createMemo, createSignal, type JSX } from 'solid-js';
import { COMPLAINT, VISIT } from '../../diagnosis/evidence.ts';
import type { Share, Weight } from '../../diagnosis/posterior.ts';
import type { FaultId } from '../../diagnosis/types.ts';
import {
  answerWords,
  detailAnswer,
  detailName,
  guideName,
  nodeWords,
} from '../shared/content-words.ts';
import { faultReason, name, names, resultName } from '../shared/staff-words.ts';
import { sayer } from '../shared/words.ts';
import { odds } from './odds.ts';
import type { Page } from './page.ts';
import { Fold } from './Fold.tsx';
import { percent } from './facts.ts';
import { rangeOf } from './stability.ts';
import type { ProblemState } from './visit.ts';
import { named } from './told.ts';
import { MOST_SHOWN, likely } from './work.ts';

export interface DiagnosisProps {
  readonly page: Page;
  readonly visit: ProblemState;
  /** Its complaint, where the visit has several. */
  readonly of?: string | undefined;
}

/** Reasons for a fault, and against it. */
const MOST_REASONS = 3;
/** Weights in decibans: 1 is "about the smallest change a person perceives" (Good), 5 triples odds. */
const SLIGHT = 1;
const CLEAR = 4;
const STRONG = 8;

/** Faults in sight at once: what else decides has to stand there too. */
const inSight = (): number => (matchMedia('(min-width: 60rem)').matches ? MOST_SHOWN : 2);

/** By name: a row whose share changes stays the same row, open if it was. */
const namesOf = (shares: readonly Share[]): FaultId[] => shares.map(({ fault }) => fault);

/** The likeliest faults in one chart; opened, the answers that speak for and against each. */
export function Faults(props: DiagnosisProps): JSX.Element {
  const t = sayer(props);
  const shown = () => likely(props.visit);
  /** Whether an answer besides the complaint tells the faults shown apart. */
  const told = () =>
    shown().some(({ weights }) =>
      weights.some(
        ({ key, decibans }) => key !== COMPLAINT && key !== VISIT && Math.abs(decibans) >= SLIGHT,
      ),
    );
  return (
    <section class="card ranking">
      <h2>{props.of ?? t('preview:ranking.title')}</h2>
      <Show when={!told()}>
        <p class="quiet">{t('preview:ranking.prior')}</p>
      </Show>
      <ol class="faults">
        <For each={namesOf(shown().slice(0, inSight()))}>
          {(fault, place) => <Fault {...props} fault={fault} place={place() + 1} />}
        </For>
      </ol>
    </section>
  );
}

/** The faults after those in sight: a few with their reasons, the rest by name. */
export function MoreFaults(props: DiagnosisProps): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const ranking = () => props.visit.ranking();
  const others = () => ranking().slice(likely(props.visit).length);
  const seen = () => Math.min(inSight(), likely(props.visit).length);
  return (
    <Fold
      class="ranking"
      title={named(props.of, t('preview:ranking.others', { count: ranking().length - seen() }))}
    >
      <ol class="faults">
        <For each={namesOf(likely(props.visit).slice(seen()))}>
          {(fault, place) => <Fault {...props} fault={fault} place={place() + 1 + seen()} />}
        </For>
      </ol>
      <p class="quiet">
        {t('preview:ranking.rest', {
          odds: odds(
            words(),
            others().reduce((sum, { share }) => sum + share, 0),
          ),
          faults: names(words(), 'faults', namesOf(others())),
        })}
      </p>
    </Fold>
  );
}

function Fault(
  props: DiagnosisProps & { readonly fault: FaultId; readonly place: number },
): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const fault = () => props.fault;
  const [open, setOpen] = createSignal(false);
  const one = createMemo(() => props.visit.ranking().find((share) => share.fault === fault()));
  const share = () => one()?.share ?? 0;
  const range = () => rangeOf(props.visit, fault());
  const reasons = (side: 'for' | 'against') =>
    (one()?.weights ?? [])
      .filter(({ decibans }) => Math.abs(decibans) >= SLIGHT && decibans > 0 === (side === 'for'))
      .toSorted((a, b) => Math.abs(b.decibans) - Math.abs(a.decibans))
      .slice(0, MOST_REASONS);
  const checks = () =>
    props.visit.model.checks
      .filter(({ results }) => results.some(({ pointsTo }) => pointsTo.includes(fault())))
      .map(({ id }) => id);
  const parts = () => props.visit.model.faults.find(({ id }) => id === fault())?.parts ?? [];
  const none = () => t('preview:plan.none');
  return (
    <li>
      <details class="fault" onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          <span class="place" aria-hidden="true">
            {props.place}
          </span>
          <span class="title">{name(words(), 'faults', fault())}</span>
          <strong class="odds">{odds(words(), share())}</strong>
          <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
            <rect class="all" y="2" width="100" height="4" />
            <rect y="2" width={100 * share()} height="4" />
            <Show when={range()}>
              {(found) => (
                <path
                  class="range"
                  d={`M${100 * found().low} 0v8m0-4H${100 * found().high}m0-4v8`}
                />
              )}
            </Show>
          </svg>
          <Show when={range()}>
            {(found) => (
              <span class="unseen">
                {t('preview:firm.range', {
                  low: percent(words(), found().low),
                  high: percent(words(), found().high),
                })}
              </span>
            )}
          </Show>
        </summary>
        <Show when={open()}>
          <p>{faultReason(words(), fault())}</p>
          <For each={['for', 'against'] as const}>
            {(side) => (
              <Show when={reasons(side).length > 0}>
                <h3>{t(`preview:ranking.${side}`)}</h3>
                <ul class={side}>
                  <For each={reasons(side)}>
                    {(weight) => (
                      <li>
                        {answered(props, weight)}{' '}
                        <span class="quiet">
                          ({t(`preview:ranking.strength.${strength(weight)}`)})
                        </span>
                      </li>
                    )}
                  </For>
                </ul>
              </Show>
            )}
          </For>
          <dl>
            <div>
              <dt>{t('preview:ranking.checks')}</dt>
              <dd>{names(words(), 'checks', checks()) || none()}</dd>
            </div>
            <div>
              <dt>{t('preview:ranking.parts')}</dt>
              <dd>{names(words(), 'parts', parts()) || none()}</dd>
            </div>
          </dl>
        </Show>
      </details>
    </li>
  );
}

function strength({ decibans }: Weight): 'strong' | 'clear' | 'slight' {
  const size = Math.abs(decibans);
  if (size >= STRONG) return 'strong';
  return size >= CLEAR ? 'clear' : 'slight';
}

/** The answer a weight comes from: what was asked or checked, a colon, what it gave. */
export function answered(
  { page: { words }, visit: { guides } }: Pick<DiagnosisProps, 'page' | 'visit'>,
  { key, answer }: Weight,
): string {
  const [kind, id = key] = key.includes('.') ? key.split('.') : ['node'];
  if (kind === 'check') return `${name(words, 'checks', id)}: ${resultName(words, id, answer)}`;
  if (kind === 'detail')
    return `${detailName(words, 'preview', id)}: ${detailAnswer(words, 'preview', id, answer)}`;
  if (key === COMPLAINT)
    return words.t('preview:ranking.complaint', { guide: guideName(words, answer) });
  if (key === VISIT) return words.t('preview:ranking.visit');
  // A page that guides share is worded under each of them.
  const of = guides.find((guide) => words.content(guide, key) !== undefined) ?? '';
  const node = { sentences: key };
  return `${nodeWords(words, { id: of }, node).short}: ${answerWords(words, { id: of }, node, answer)}`;
}
