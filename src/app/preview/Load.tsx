import { For, Show, createMemo, type JSX } from 'solid-js';
import { worthAsking, type Change } from '../../diagnosis/ask.ts';
import { weigh } from '../../diagnosis/parts.ts';
import { stillOpen } from '../../diagnosis/plan.ts';
import { detailAnswer, detailName } from '../shared/content-words.ts';
import { name, names } from '../shared/staff-words.ts';
import { sayer, type Words } from '../shared/words.ts';
import { minutes, money } from './facts.ts';
import { odds } from './odds.ts';
import type { Page } from './page.ts';
import { Fold } from './Fold.tsx';
import type { DiagnosisProps } from './Faults.tsx';
import type { VisitState } from './visit.ts';
import { asksModel, loaded, needed } from './work.ts';

interface Props {
  readonly page: Page;
  readonly visit: VisitState;
  /** It came with the code in the long form. */
  readonly modelNumber: string | undefined;
}

/** Parts of which less is needed are not worth a line. */
const LEAST = 0.01;
const HOUR = 60;
const DETAIL = /^detail\./;

/** What an answer would change: the answer, and what to load or leave out then. */
function changed(words: Words, detail: string, { answer, more, fewer }: Change): string {
  return [
    `${detailAnswer(words, 'preview', detail, answer)}:`,
    ...(more.length > 0
      ? [words.t('preview:ask.more', { parts: names(words, 'parts', more) })]
      : []),
    ...(fewer.length > 0
      ? [words.t('preview:ask.fewer', { parts: names(words, 'parts', fewer) })]
      : []),
  ].join(' ');
}

/** What to put on the van, and the one thing to ask before: the detail that would tell most. */
export function Load(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const parts = () => loaded(props.visit);
  const asked = createMemo(() =>
    props.visit.taps().length > 0
      ? undefined
      : props.visit.problems
          .flatMap(({ model, evidence }) => worthAsking(model, evidence(), 1))
          .toSorted((a, b) => b.saves - a.saves)[0],
  );
  return (
    <section class="card load">
      <h2>{t('preview:load.title')}</h2>
      <ul class="parts">
        <For each={parts()} fallback={<li>{t('preview:load.noParts')}</li>}>
          {(part) => (
            <li>
              {name(words(), 'parts', part.id)}
              {part.fits === 'any' ? ` ${t('preview:load.universal')} ` : ' '}
            </li>
          )}
        </For>
        <Show when={asksModel(props.visit, props.modelNumber)}>
          <li class="call">{t('preview:load.callModel')}</li>
        </Show>
      </ul>
      <Show when={asked()}>
        {(one) => (
          <>
            <h2>{t('preview:ask.title')}</h2>
            <p class="ask">
              {detailName(words(), 'note', one().key.replace(DETAIL, ''))}{' '}
              <span class="quiet">
                {one()
                  .changes.map((change) => changed(words(), one().key.replace(DETAIL, ''), change))
                  .join(' ')}
              </span>
            </p>
          </>
        )}
      </Show>
    </section>
  );
}

/** What else to take along for the checks, and what each part saves and costs. */
export function Kit(props: Pick<Props, 'page' | 'visit'>): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  return (
    <Fold class="kit" title={t('preview:load.more')}>
      <dl>
        <For each={['tools', 'skills'] as const}>
          {(kind) => (
            <div>
              <dt>{t(`preview:plan.${kind}`)}</dt>
              <dd>{names(words(), kind, needed(props.visit, kind)) || t('preview:plan.none')}</dd>
            </div>
          )}
        </For>
      </dl>
      <For each={props.visit.problems}>{(one) => <Costs page={props.page} visit={one} />}</For>
    </Fold>
  );
}

/** What the parts for a problem save and cost. */
function Costs(props: DiagnosisProps): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const costs = () => props.visit.model.costs;
  const amount = (value: number) => money(words(), value, costs().currency);
  const finding = () => props.visit.plan().best.expectedMinutes;
  const weighed = () => {
    const { model, evidence, load } = props.visit;
    return weigh(model, stillOpen(model, evidence()), load()).filter(
      ({ part, needed: chance }) => chance >= LEAST || load().parts.includes(part.id),
    );
  };
  return (
    <>
      <p>{t('preview:load.reaches', { odds: odds(words(), props.visit.load().chance) })}</p>
      <dl class="weighed">
        <For each={weighed()}>
          {({ part, saves, costs: carrying }) => (
            <div>
              <dt>{name(words(), 'parts', part.id)}</dt>
              <dd>
                {t('preview:load.weighed', { saves: amount(saves), costs: amount(carrying) })}
              </dd>
            </div>
          )}
        </For>
      </dl>
      <p class="quiet">
        {t('preview:load.rule', {
          second: amount(costs().secondVisit),
          cost: amount(props.visit.load().cost + (finding() / HOUR) * costs().hourlyRate),
          minutes: minutes(words(), finding()),
        })}
      </p>
    </>
  );
}
