import { For, Show, createMemo, type JSX } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { madeOn } from '../../note/day.ts';
import type { Reading } from '../../note/types.ts';
import {
  answerWords,
  detailAnswer,
  detailName,
  guideName,
  nodeWords,
} from '../shared/content-words.ts';
import { flagWords } from '../shared/staff-words.ts';
import { Diagnosis } from './Diagnosis.tsx';
import { DriftCard } from './Drift.tsx';
import { CopyJob } from '../shared/CopyJob.tsx';
import { Fetching } from '../shared/Fetching.tsx';
import { createFetched } from '../shared/fetched.ts';
import { pageWords, sayer } from '../shared/words.ts';
import type { Page, PreviewPart } from './page.ts';
import { callerFields } from '../../visit/job.ts';
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
  /** A guide that the site no longer has is shown by the names in its codebook. */
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
  const view = createMemo(() => readVisit(note(), props.page.codebooks, props.page));
  const legs = () => view().legs;
  const drift = createMemo(() => driftOf(props.page.staffViews, view().steps));
  return (
    <article class="note" aria-label={t('preview:outcome.note')}>
      <div class="said">
        <Outcome page={props.page} view={view()} />
        <Flags page={props.page} view={view()} />
        <section class="card">
          <h2>{t('preview:error.title')}</h2>
          <Show when={note().error} fallback={<p class="quiet">{t('preview:error.none')}</p>}>
            <p class="display">
              <bdi>{note().error}</bdi>
            </p>
          </Show>
          <Show when={props.extras.error}>
            <p class="quiet">{t('preview:error.longForm')}:</p>
            <p class="display">
              <bdi>{props.extras.error}</bdi>
            </p>
          </Show>
        </section>
        <LongForm {...props} />
        <section class="card">
          <h2>{t('preview:answers.title')}</h2>
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
                        {t(`preview:groups.${group}`)}
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
          <h2>{t('preview:tried.title')}</h2>
          <Show
            when={view().tried.length > 0}
            fallback={<p class="quiet">{t('preview:tried.none')}</p>}
          >
            <Lines page={props.page} view={view()} steps={view().tried} />
          </Show>
        </section>
        <Show when={drift()}>{(found) => <DriftCard page={props.page} drift={found()} />}</Show>
        <Made page={props.page} day={note().day} />
        <details class="card">
          <summary>{t('preview:notAsked.title', { count: view().notAsked.length })}</summary>
          <p class="quiet">{t('preview:notAsked.lead')}</p>
          <ul>
            <For each={view().notAsked}>
              {(node) => <li>{nodeWords(props.page.words, view().guide, node).short}</li>}
            </For>
          </ul>
        </details>
      </div>
      <Show when={props.reading.code} keyed>
        {(code) => (
          <Diagnosis page={props.page} view={view()} code={code} modelNumber={props.extras.caller.model} />
        )}
      </Show>
      <footer class="meta">
        <p class="quiet">
          {t('preview:meta', {
            code: props.reading.code,
            guide: note().guide,
            release: note().release,
          })}
        </p>
        <CopyJob
          page={props.page}
          view={view()}
          code={props.reading.code}
          caller={props.extras.caller}
          error={props.extras.error}
        />
        <button type="button" class="plain" onClick={() => print()}>
          {t('preview:print')}
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
  const title = () => nodeWords(words(), props.view.guide, props.view.end).short;
  return (
    <section class="card outcome" data-urgency={props.view.urgency}>
      <h2>
        <span class="quiet">{words().t(`preview:outcome.${props.view.state}`)}</span>{' '}
        {open() ? words().t('preview:outcome.next', { title: title() }) : title()}
      </h2>
      <p class="urgency">{words().t(`preview:outcome.urgency.${props.view.urgency}`)}</p>
    </section>
  );
}

function Flags(props: ViewProps): JSX.Element {
  const words = () => props.page.words;
  const any = () => props.view.danger !== undefined || props.view.flags.length > 0;
  return (
    <section class="card flags" classList={{ raised: any() }}>
      <h2>{words().t('preview:flags.title')}</h2>
      <Show when={any()} fallback={<p class="quiet">{words().t('preview:flags.none')}</p>}>
        <ul>
          <Show when={props.view.danger}>
            {(step) => (
              <li class="strong">
                {words().t('preview:flags.danger', {
                  what: answerWords(words(), props.view.guide, step().node, step().edge.id),
                })}
              </li>
            )}
          </Show>
          <For each={props.view.flags}>{(flag) => <li>{flagWords(words(), flag)}</li>}</For>
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
            <dt>{nodeWords(props.page.words, props.view.guide, node).short}</dt>
            <dd>{answerWords(props.page.words, props.view.guide, node, edge.id)}</dd>
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
      <h3>{words().t('preview:groups.details')}</h3>
      <dl>
        <For each={details()}>
          {([id, answer]) => (
            <div>
              <dt>{detailName(words(), 'preview', id)}</dt>
              <dd>{detailAnswer(words(), 'preview', id, answer)}</dd>
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
    <Show when={Object.keys(props.extras.caller).length > 0}>
      <section class="card long">
        <h2>{t('preview:long.title')}</h2>
        <dl>
          <For each={callerFields}>
            {(part) => (
              <Show when={props.extras.caller[part]}>
                <div>
                  <dt>{t(`job:lines.${part}`)}</dt>
                  <dd>
                    <bdi>{props.extras.caller[part]}</bdi>
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
      <h2>{t('preview:made.title')}</h2>
      <p>
        {t('preview:made.on', { date: long(made().latest), ago: ago(made().latest) })}
        <br />
        <span class="quiet">{t('preview:made.or', { date: long(made().earlier) })}</span>
      </p>
    </section>
  );
}
