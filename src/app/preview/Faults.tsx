import { For, Show, type JSX } from 'solid-js';
import { COMPLAINT, VISIT } from '../../diagnosis/evidence.ts';
import type { Share, Weight } from '../../diagnosis/posterior.ts';
import { Bar } from './Bar.tsx';
import { RankingStability } from './RankingStability.tsx';
import { shareWords } from './facts.ts';
import {
  answerWords,
  detailAnswer,
  detailName,
  guideName,
  nodeWords,
} from '../shared/content-words.ts';
import { faultReason, name, names, resultName } from '../shared/staff-words.ts';
import type { Page } from './page.ts';
import type { DiagnosisState } from './visit.ts';

interface Props {
  readonly page: Page;
  /** The guides that the journey came through, the last first. */
  readonly guides: readonly string[];
  readonly visit: DiagnosisState;
}

/** Faults shown in full, and the least share to be among them. */
const MOST_SHOWN = 5;
const LEAST_SHOWN = 0.03;
/** Reasons for a fault, and against it. */
const MOST_REASONS = 3;
/** Weights in decibans: 1 is "about the smallest change a person perceives" (Good), 5 triples odds. */
const SLIGHT = 1;
const CLEAR = 4;
const STRONG = 8;

/** The ranking of faults, with the answers that speak for and against each. */
export function Faults(props: Props): JSX.Element {
  const words = () => props.page.words;
  const ranking = () => props.visit.ranking();
  const shown = () =>
    ranking().filter(({ share }, index) => index < MOST_SHOWN && share >= LEAST_SHOWN);
  const others = () => ranking().slice(shown().length);
  /** Whether an answer besides the complaint tells the faults shown apart. */
  const told = () =>
    shown().some(({ weights }) =>
      weights.some(
        ({ key, decibans }) => key !== COMPLAINT && key !== VISIT && Math.abs(decibans) >= SLIGHT,
      ),
    );
  return (
    <section class="ranking">
      <h2>{words().t('preview:ranking.title')}</h2>
      <p class="quiet">{words().t('diagnosis:source')}</p>
      <Show when={!told()}>
        <p class="strong">{words().t('preview:ranking.prior')}</p>
      </Show>
      <RankingStability page={props.page} visit={props.visit} />
      <ol class="faults">
        <For each={shown()}>{(one) => <Fault {...props} one={one} />}</For>
      </ol>
      <details class="card">
        <summary>{words().t('preview:ranking.others', { count: others().length })}</summary>
        <ul>
          <For each={others()}>
            {(one) => (
              <li>
                {name(words(), 'faults', one.fault)}: {shareWords(words(), one.share)}
              </li>
            )}
          </For>
        </ul>
      </details>
      <details class="card">
        <summary>{words().t('preview:ranking.assumptions')}</summary>
        <ul>
          <For each={words().list('diagnosis:limits')}>{(line) => <li>{line}</li>}</For>
          <li>{words().t('preview:ranking.decibans')}</li>
        </ul>
      </details>
    </section>
  );
}

function Fault(props: Props & { readonly one: Share }): JSX.Element {
  const words = () => props.page.words;
  const fault = () => props.one.fault;
  const sorted = () =>
    props.one.weights
      .filter(({ decibans }) => Math.abs(decibans) >= SLIGHT)
      .toSorted((a, b) => Math.abs(b.decibans) - Math.abs(a.decibans));
  const speaking = (side: 'for' | 'against') =>
    sorted()
      .filter(({ decibans }) => decibans > 0 === (side === 'for'))
      .slice(0, MOST_REASONS);
  const checks = () =>
    props.visit.model.checks.filter(({ results }) =>
      results.some(({ pointsTo }) => pointsTo.includes(fault())),
    );
  const parts = () => props.visit.model.faults.find(({ id }) => id === fault())?.parts ?? [];
  return (
    <li class="card">
      <h3>{name(words(), 'faults', fault())}</h3>
      <p class="share">
        <Bar part={props.one.share} />
        <span>{shareWords(words(), props.one.share)}</span>
      </p>
      <p>{faultReason(words(), fault())}</p>
      <For each={['for', 'against'] as const}>
        {(side) => (
          <Show when={speaking(side).length > 0}>
            <h4>{words().t(`preview:ranking.${side}`)}</h4>
            <ul class={side}>
              <For each={speaking(side)}>{(weight) => <Reason {...props} weight={weight} />}</For>
            </ul>
          </Show>
        )}
      </For>
      <Show when={sorted().length === 0}>
        <p class="quiet">{words().t('preview:ranking.noReasons')}</p>
      </Show>
      <dl>
        <div>
          <dt>{words().t('preview:ranking.checks')}</dt>
          <dd>
            {names(
              words(),
              'checks',
              checks().map(({ id }) => id),
            ) || words().t('preview:ranking.noParts')}
          </dd>
        </div>
        <div>
          <dt>{words().t('preview:ranking.parts')}</dt>
          <dd>{names(words(), 'parts', parts()) || words().t('preview:ranking.noParts')}</dd>
        </div>
      </dl>
    </li>
  );
}

function Reason(props: Props & { readonly weight: Weight }): JSX.Element {
  const words = () => props.page.words;
  const strength = () => {
    const size = Math.abs(props.weight.decibans);
    if (size >= STRONG) return 'strong';
    return size >= CLEAR ? 'clear' : 'slight';
  };
  const decibans = () =>
    new Intl.NumberFormat(words().language, {
      signDisplay: 'always',
      maximumFractionDigits: 0,
    }).format(props.weight.decibans);
  return (
    <li>
      <span class="answer">{answered(props, props.weight)}</span>{' '}
      <span class="quiet">
        (
        {words().t('preview:ranking.weight', {
          strength: words().t(`preview:ranking.strength.${strength()}`),
          decibans: decibans(),
          count: Math.round(Math.abs(props.weight.decibans)),
        })}
        )
      </span>
    </li>
  );
}

/** The answer a weight comes from: what was asked or checked, a colon, what it gave. */
function answered({ page: { words }, guides }: Props, { key, answer }: Weight): string {
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
