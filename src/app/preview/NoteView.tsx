import { For, Show, createMemo, type JSX } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { bookGuide } from '../../note/library.ts';
import type { BookGuide } from '../../note/library.ts';
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
import { driftOf } from './drift.ts';
import { Fetching } from '../shared/Fetching.tsx';
import { createFetched } from '../shared/fetched.ts';
import { pageWords, sayer } from '../shared/words.ts';
import type { Page, PreviewPart } from './page.ts';
import {
  dangerOf,
  endOf,
  flagsOf,
  grouped,
  legsOf,
  linesOf,
  notAsked,
  type Line,
} from '../../visit/sides.ts';
import type { Extras } from './state.ts';

interface Props {
  readonly page: Page;
  readonly reading: Extract<Reading, { kind: 'exact' }>;
  readonly extras: Extras;
}

/** What a code says, the most urgent first. */
export function NoteView(props: Props): JSX.Element {
  const guide = createMemo(() => {
    const { note } = props.reading;
    const book = props.page.library.get(note.release);
    return book && bookGuide(book, note.guide);
  });
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
    <Show when={guide()} keyed>
      {(found) => (
        <Show
          when={page()}
          keyed
          fallback={<Fetching words={props.page.words} fetched={fetched} />}
        >
          {(loaded) => <Note {...props} page={loaded} guide={found} />}
        </Show>
      )}
    </Show>
  );
}

function Note(props: Props & { readonly guide: BookGuide }): JSX.Element {
  const t = sayer(props);
  const note = () => props.reading.note;
  const lines = createMemo(() => linesOf(props.guide, note().journey));
  const legs = () => legsOf(props.guide, lines());
  const tried = () => lines().filter(({ node }) => node.kind === 'step');
  const missed = () => notAsked(props.guide, lines());
  const drift = createMemo(() => driftOf(props.page.sides, props.guide, lines()));
  return (
    <article class="note" aria-label={t('preview:outcome.note')}>
      <div class="said">
        <Outcome {...props} lines={lines()} />
        <Flags {...props} lines={lines()} />
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
                <For each={grouped(props.page.sides, props.guide, leg.lines)}>
                  {([group, list]) => (
                    <>
                      <Dynamic component={legs().length > 1 ? 'h4' : 'h3'}>
                        {t(`preview:groups.${group}`)}
                      </Dynamic>
                      <Lines {...props} lines={list} />
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
          <Show when={tried().length > 0} fallback={<p class="quiet">{t('preview:tried.none')}</p>}>
            <Lines {...props} lines={tried()} />
          </Show>
        </section>
        <Show when={drift()}>{(found) => <DriftCard page={props.page} drift={found()} />}</Show>
        <Made page={props.page} day={note().day} />
        <details class="card">
          <summary>{t('preview:notAsked.title', { count: missed().length })}</summary>
          <p class="quiet">{t('preview:notAsked.lead')}</p>
          <ul>
            <For each={missed()}>
              {(node) => <li>{nodeWords(props.page.words, props.guide, node).short}</li>}
            </For>
          </ul>
        </details>
      </div>
      <Show when={props.reading.code} keyed>
        {(code) => <Diagnosis page={props.page} guide={props.guide} note={note()} code={code} />}
      </Show>
      <footer class="meta">
        <p class="quiet">
          {t('preview:meta', {
            code: props.reading.code,
            guide: props.guide.id,
            release: note().release,
          })}
        </p>
        <button type="button" class="plain" onClick={() => print()}>
          {t('preview:print')}
        </button>
      </footer>
    </article>
  );
}

type NoteProps = Props & { readonly guide: BookGuide; readonly lines: readonly Line[] };

function Outcome(props: NoteProps): JSX.Element {
  const words = () => props.page.words;
  const end = () => endOf(props.guide, props.reading.note.journey);
  const open = () => end().ways.length > 0;
  const kind = () => (end().kind === 'stop' ? 'stop' : 'finish');
  const title = () => nodeWords(words(), props.guide, end()).short;
  return (
    <section class="card outcome" data-urgency={open() ? 'open' : end().urgency}>
      <h2>
        <span class="quiet">{words().t(`preview:outcome.${open() ? 'unfinished' : kind()}`)}</span>{' '}
        {open() ? words().t('preview:outcome.next', { title: title() }) : title()}
      </h2>
      <p class="urgency">
        {words().t(`preview:outcome.urgency.${open() ? 'open' : end().urgency}`)}
      </p>
    </section>
  );
}

function Flags(props: NoteProps): JSX.Element {
  const words = () => props.page.words;
  const danger = () => dangerOf(props.lines);
  const raised = () =>
    flagsOf(
      props.page.sides,
      props.guide,
      props.lines,
      endOf(props.guide, props.reading.note.journey),
      props.page.breakerOff,
    );
  const any = () => danger() !== undefined || raised().length > 0;
  return (
    <section class="card flags" classList={{ raised: any() }}>
      <h2>{words().t('preview:flags.title')}</h2>
      <Show when={any()} fallback={<p class="quiet">{words().t('preview:flags.none')}</p>}>
        <ul>
          <Show when={danger()}>
            {(line) => (
              <li class="strong">
                {words().t('preview:flags.danger', {
                  what: answerWords(words(), props.guide, line().node, line().answer),
                })}
              </li>
            )}
          </Show>
          <For each={raised()}>{(flag) => <li>{flagWords(words(), flag)}</li>}</For>
        </ul>
      </Show>
    </section>
  );
}

function Lines(props: Omit<NoteProps, 'reading' | 'extras'>): JSX.Element {
  return (
    <dl>
      <For each={props.lines}>
        {({ node, answer }) => (
          <div>
            <dt>{nodeWords(props.page.words, props.guide, node).short}</dt>
            <dd>{answerWords(props.page.words, props.guide, node, answer)}</dd>
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
    <Show when={props.extras.model ?? props.extras.remark}>
      <section class="card long">
        <h2>{t('preview:long.title')}</h2>
        <dl>
          <For each={['model', 'remark'] as const}>
            {(part) => (
              <Show when={props.extras[part]}>
                <div>
                  <dt>{t(`preview:long.${part}`)}</dt>
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
      <h2>{t('preview:made.title')}</h2>
      <p>
        {t('preview:made.on', { date: long(made().latest), ago: ago(made().latest) })}
        <br />
        <span class="quiet">{t('preview:made.or', { date: long(made().earlier) })}</span>
      </p>
    </section>
  );
}
