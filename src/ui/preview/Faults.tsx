import { For, Show, createMemo, type JSX } from 'solid-js';
import { band } from '../../diagnosis/band.ts';
import { evidenceOf } from '../../diagnosis/evidence.ts';
import { posterior, type Share, type Weight } from '../../diagnosis/posterior.ts';
import type { Model } from '../../diagnosis/types.ts';
import type { BookGuide } from '../../note/library.ts';
import type { Note } from '../../note/types.ts';
import type { Page } from './page.ts';
import { firstOf } from './sentences.ts';

interface Props {
  readonly page: Page;
  readonly guide: BookGuide;
  readonly note: Note;
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

/** The first ranking of faults, with the answers that speak for and against each. */
export function Faults(props: Props): JSX.Element {
  const words = () => props.page.words;
  const model = () => props.page.models[props.guide.id];
  return (
    <section class="ranking">
      <h2>{words().t('ranking.title')}</h2>
      <Show when={model()} fallback={<p class="quiet">{words().t('ranking.none')}</p>} keyed>
        {(found) => <Ranking {...props} model={found} />}
      </Show>
    </section>
  );
}

type RankingProps = Props & { readonly model: Model };

function Ranking(props: RankingProps): JSX.Element {
  const words = () => props.page.words;
  const ranking = createMemo(() =>
    posterior(props.model, evidenceOf(props.guide, props.note.journey, props.note.details)),
  );
  const shown = () =>
    ranking().filter(({ share }, index) => index < MOST_SHOWN && share >= LEAST_SHOWN);
  const others = () => ranking().slice(shown().length);
  const told = () => ranking().some(({ weights }) => weights.length > 0);
  return (
    <>
      <p class="quiet">{words().t('diagnosis:source')}</p>
      <Show when={!told()}>
        <p class="strong">{words().t('ranking.prior')}</p>
      </Show>
      <ol class="faults">
        <For each={shown()}>{(one) => <Fault {...props} one={one} />}</For>
      </ol>
      <details class="card">
        <summary>{words().t('ranking.others', { count: others().length })}</summary>
        <ul>
          <For each={others()}>
            {(one) => (
              <li>
                {name(props.page, 'faults', one.fault)}: {shareWords(props.page, one.share)}
              </li>
            )}
          </For>
        </ul>
      </details>
      <details class="card">
        <summary>{words().t('ranking.assumptions')}</summary>
        <ul>
          <For each={words().list('diagnosis:limits')}>{(line) => <li>{line}</li>}</For>
          <li>{words().t('ranking.decibans')}</li>
        </ul>
      </details>
    </>
  );
}

function Fault(props: RankingProps & { readonly one: Share }): JSX.Element {
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
    props.model.checks.filter(({ results }) =>
      results.some(({ pointsTo }) => pointsTo.includes(fault())),
    );
  const parts = () => props.model.faults.find(({ id }) => id === fault())?.parts ?? [];
  const list = (kind: string, ids: readonly string[]) =>
    ids.map((id) => name(props.page, kind, id, '.name')).join('; ');
  return (
    <li class="card">
      <h3>{name(props.page, 'faults', fault())}</h3>
      <p class="share">
        <svg viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
          <rect class="all" width="100" height="6" />
          <rect width={100 * props.one.share} height="6" />
        </svg>
        <span>{shareWords(props.page, props.one.share)}</span>
      </p>
      <p>{words().t(`diagnosis:faults.${fault()}.why`)}</p>
      <For each={['for', 'against'] as const}>
        {(side) => (
          <Show when={speaking(side).length > 0}>
            <h4>{words().t(`ranking.${side}`)}</h4>
            <ul class={side}>
              <For each={speaking(side)}>{(weight) => <Reason {...props} weight={weight} />}</For>
            </ul>
          </Show>
        )}
      </For>
      <Show when={sorted().length === 0}>
        <p class="quiet">{words().t('ranking.noReasons')}</p>
      </Show>
      <dl>
        <div>
          <dt>{words().t('ranking.checks')}</dt>
          <dd>
            {list(
              'checks',
              checks().map(({ id }) => id),
            )}
          </dd>
        </div>
        <div>
          <dt>{words().t('ranking.parts')}</dt>
          <dd>{list('parts', parts()) || words().t('ranking.noParts')}</dd>
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
        {words().t('ranking.weight', {
          strength: words().t(`ranking.strength.${strength()}`),
          decibans: decibans(),
          count: Math.round(Math.abs(props.weight.decibans)),
        })}
        )
      </span>
    </li>
  );
}

/** The answer a weight comes from: what was asked, a colon, what was said. */
function answered({ page: { words }, guide }: Props, { key, answer }: Weight): string {
  const detail = key.startsWith('detail.') ? key.slice('detail.'.length) : undefined;
  const [asked, said] =
    detail === undefined
      ? [`${guide.id}:${key}.short`, `${guide.id}:${key}.answers.${answer}`]
      : [`details.${detail}.name`, `details.${detail}.answers.${answer}`];
  return `${firstOf(words, [asked], key)}: ${firstOf(words, [said], answer)}`;
}

function name({ words }: Page, kind: string, id: string, part = ''): string {
  const keys = [
    `diagnosis:${kind}.${id}${part}`,
    `diagnosis:${kind}.${id}.name`,
    `diagnosis:${kind}.${id}`,
  ];
  const key = keys.find((one) => words.has(one) && typeof words.t(one) === 'string');
  return key === undefined ? id : words.t(key);
}

function shareWords({ words }: Page, share: number): string {
  const percent = new Intl.NumberFormat(words.language, {
    style: 'percent',
    maximumFractionDigits: share < 0.01 ? 1 : 0,
  });
  return words.t('ranking.share', {
    share: percent.format(share),
    band: words.t(`diagnosis:bands.${band(share)}`),
  });
}
