import { For, Show, createMemo, type JSX } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { madeOn } from '../../note/day.ts';
import type { Reading } from '../../note/types.ts';
import { answerOf } from '../note/sentences.ts';
import { Diagnosis } from './Diagnosis.tsx';
import { DriftCard } from './Drift.tsx';
import { Fetching } from '../shared/Fetching.tsx';
import { createFetched } from '../shared/fetched.ts';
import { pageWords, sayer } from '../shared/words.ts';
import type { Page, PreviewPart } from './page.ts';
import { firstOf, guideName, shortOf } from './sentences.ts';
import { driftOf } from '../../visit/drift.ts';
import { readVisit } from '../../visit/read-visit.ts';
import type { Step, VisitView } from '../../visit/read-visit.ts';
import type { Extras } from './state.ts';

interface Props {
  readonly page: Page;
  readonly reading: Extract<Reading, { kind: 'exact' }>;
  readonly extras: Extras;
}

/** What a code says, the most urgent first. */
export function NoteView(props: Props): JSX.Element {
  const file = () => props.page.files[props.reading.note.guide];
  const fetched = createFetched<PreviewPart>(file);
  /** A guide that the site no longer has is shown by the names in its book. */
  const page = createMemo((): Page | undefined => {
    const part = fetched.value();
    if (!part) return file() === undefined ? props.page : undefined;
    const { texts, ...rest } = part;
    return { ...props.page, ...rest, words: pageWords(texts) };
  });
  return (
    <Show when={page()} keyed fallback={<Fetching words={props.page.words} fetched={fetched} />}>
      {(loaded) => <Note {...props} page={loaded} />}
    </Show>
  );
}

function Note(props: Props): JSX.Element {
  const t = sayer(props);
  const note = () => props.reading.note;
  const view = createMemo(() => readVisit(note(), props.page.library, props.page));
  const legs = () => view().legs;
  const drift = createMemo(() => driftOf(props.page.staffViews, view().steps));
  return (
    <article class="note" aria-label={t('outcome.note')}>
      <div class="said">
        <Outcome page={props.page} view={view()} />
        <Flags page={props.page} view={view()} />
        <section class="card">
          <h2>{t('error.title')}</h2>
          <Show when={note().error} fallback={<p class="quiet">{t('error.none')}</p>}>
            <p class="display">
              <bdi>{note().error}</bdi>
            </p>
          </Show>
          <Show when={props.extras.error}>
            <p class="quiet">{t('error.longForm')}:</p>
            <p class="display">
              <bdi>{props.extras.error}</bdi>
            </p>
          </Show>
        </section>
        <LongForm {...props} />
        <section class="card">
          <h2>{t('answers.title')}</h2>
          <For each={legs()}>
            {(leg) => (
              <>
                <Show when={legs().length > 1}>
                  <h3 class="leg">{guideName(props.page.words, leg.guide)}</h3>
                </Show>
                <For each={leg.groups}>
                  {([group, list]) => (
                    <>
                      <Dynamic component={legs().length > 1 ? 'h4' : 'h3'}>
                        {t(`groups.${group}`)}
                      </Dynamic>
                      <Lines page={props.page} view={view()} steps={list} />
                    </>
                  )}
                </For>
              </>
            )}
          </For>
          <Details {...props} />
        </section>
        <section class="card">
          <h2>{t('tried.title')}</h2>
          <Show when={view().tried.length > 0} fallback={<p class="quiet">{t('tried.none')}</p>}>
            <Lines page={props.page} view={view()} steps={view().tried} />
          </Show>
        </section>
        <Show when={drift()}>
          {(found) => <DriftCard page={props.page} drift={found()} />}
        </Show>
        <Made page={props.page} day={note().day} />
        <details class="card">
          <summary>{t('notAsked.title', { count: view().notAsked.length })}</summary>
          <p class="quiet">{t('notAsked.lead')}</p>
          <ul>
            <For each={view().notAsked}>
              {(node) => <li>{shortOf(props.page.words, view().guide, node)}</li>}
            </For>
          </ul>
        </details>
      </div>
      <Show when={props.reading.code} keyed>
        {(code) => <Diagnosis page={props.page} view={view()} code={code} />}
      </Show>
      <footer class="meta">
        <p class="quiet">
          {t('meta', {
            code: props.reading.code,
            guide: note().guide,
            release: note().release,
          })}
        </p>
        <button type="button" class="plain" onClick={() => print()}>
          {t('print')}
        </button>
      </footer>
    </article>
  );
}

interface ViewProps {
  readonly page: Page;
  readonly view: VisitView;
}

function Outcome(props: ViewProps): JSX.Element {
  const words = () => props.page.words;
  const open = () => props.view.state === 'open';
  const title = () => shortOf(words(), props.view.guide, props.view.end);
  return (
    <section class="card outcome" data-urgency={props.view.urgency}>
      <h2>
        <span class="quiet">{words().t(`outcome.${props.view.state}`)}</span>{' '}
        {open() ? words().t('outcome.next', { title: title() }) : title()}
      </h2>
      <p class="urgency">{words().t(`outcome.urgency.${props.view.urgency}`)}</p>
    </section>
  );
}

function Flags(props: ViewProps): JSX.Element {
  const words = () => props.page.words;
  const raised = () => props.view.danger !== undefined || props.view.flags.length > 0;
  return (
    <section class="card flags" classList={{ raised: raised() }}>
      <h2>{words().t('flags.title')}</h2>
      <Show when={raised()} fallback={<p class="quiet">{words().t('flags.none')}</p>}>
        <ul>
          <Show when={props.view.danger}>
            {(step) => (
              <li class="strong">
                {words().t('flags.danger', {
                  what: answerOf(words(), props.view.guide, step().node, step().edge.id),
                })}
              </li>
            )}
          </Show>
          <For each={props.view.flags}>{(flag) => <li>{words().t(`flags.${flag}`)}</li>}</For>
        </ul>
      </Show>
    </section>
  );
}

function Lines(props: ViewProps & { readonly steps: readonly Step[] }): JSX.Element {
  return (
    <dl>
      <For each={props.steps}>
        {({ node, edge }) => (
          <div>
            <dt>{shortOf(props.page.words, props.view.guide, node)}</dt>
            <dd>{answerOf(props.page.words, props.view.guide, node, edge.id)}</dd>
          </div>
        )}
      </For>
    </dl>
  );
}

function Details(props: Props): JSX.Element {
  const words = () => props.page.words;
  const details = () => Object.entries(props.reading.note.details);
  return (
    <Show when={details().length > 0}>
      <h3>{words().t('groups.details')}</h3>
      <dl>
        <For each={details()}>
          {([id, answer]) => (
            <div>
              <dt>{firstOf(words(), [`details.${id}.name`], id)}</dt>
              <dd>{firstOf(words(), [`details.${id}.answers.${answer}`], answer)}</dd>
            </div>
          )}
        </For>
      </dl>
    </Show>
  );
}

function LongForm(props: Props): JSX.Element {
  const t = sayer(props);
  return (
    <Show when={props.extras.model ?? props.extras.remark}>
      <section class="card long">
        <h2>{t('long.title')}</h2>
        <dl>
          <For each={['model', 'remark'] as const}>
            {(part) => (
              <Show when={props.extras[part]}>
                <div>
                  <dt>{t(`long.${part}`)}</dt>
                  <dd>
                    <bdi>{props.extras[part]}</bdi>
                  </dd>
                </div>
              </Show>
            )}
          </For>
        </dl>
      </section>
    </Show>
  );
}

function Made(props: { readonly page: Page; readonly day: number }): JSX.Element {
  const t = sayer(props);
  const language = () => props.page.words.language;
  // The writer's day is the calendar's; so is the reader's.
  const now = new Date();
  const today = new Date(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()));
  const made = () => madeOn(props.day, today);
  const long = (date: Date) =>
    new Intl.DateTimeFormat(language(), { dateStyle: 'full', timeZone: 'UTC' }).format(date);
  const ago = (date: Date) =>
    new Intl.RelativeTimeFormat(language(), { numeric: 'auto' }).format(
      Math.round((date.getTime() - today.getTime()) / 86_400_000),
      'day',
    );
  return (
    <section class="card made">
      <h2>{t('made.title')}</h2>
      <p>
        {t('made.on', { date: long(made().latest), ago: ago(made().latest) })}
        <br />
        <span class="quiet">{t('made.or', { date: long(made().earlier) })}</span>
      </p>
    </section>
  );
}
