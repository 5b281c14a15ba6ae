import { For, Show, createMemo, createSignal, onCleanup, onMount, type JSX } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { hashOf } from '../../address/grammar.ts';
import { readCode } from '../../note/read.ts';
import { joined } from '../../visit/hand-over.ts';
import { readVisit, type VisitView } from '../../visit/read-visit.ts';
import { LazyDetails } from '../visits/LazyDetails.tsx';
import { CopyJob } from '../shared/CopyJob.tsx';
import { guideName } from '../shared/content-words.ts';
import { Fetching } from '../shared/Fetching.tsx';
import { breathe } from '../shared/breathe.ts';
import { createFetched } from '../shared/fetched.ts';
import { pageWords, sayer } from '../shared/words.ts';
import { Answers } from './Answers.tsx';
import { Checks } from './Checks.tsx';
import { Faults, MoreFaults } from './Faults.tsx';
import { Kit, Load } from './Load.tsx';
import type { Page, PreviewPart } from './page.ts';
import { Where } from './Where.tsx';
import type { Sheet as SheetPart } from './Sheet.tsx';
import { flagLines, knownFacts, outcomeWords, type VisitProps } from './told.ts';
import { createVisit, type DiagnosisState } from './visit.ts';

type Props = Pick<VisitProps, 'page' | 'reading' | 'extras'>;

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
  const view = createMemo(() => {
    const figures = page();
    return figures && readVisit(props.reading.note, props.page.codebooks, figures);
  });
  return (
    <Show when={page()} fallback={<Fetching words={props.page.words} fetched={fetched} />}>
      {(loaded) => (
        <Show when={view()} keyed>
          {/* Another code is another visit. */}
          {(seen) => <Visit {...props} page={loaded()} view={seen} />}
        </Show>
      )}
    </Show>
  );
}

function Visit(props: Omit<VisitProps, 'visit'>): JSX.Element {
  const t = sayer(props);
  // Another code makes another one of us: what is read here does not change.
  // eslint-disable-next-line solid/reactivity
  const { view, reading } = props;
  const { model, evidence, state, urgency, last, legs } = view;
  const visit = model && createVisit(model, evidence, reading.code);
  const guides = [last, ...legs.map((leg) => leg.guide)];
  /** Nobody is to drive there yet, or need not at all. */
  const waits = urgency === 'emergency' || urgency === 'none';
  const work = (seen: DiagnosisState) => (
    <div class="work">
      <Faults page={props.page} visit={seen} guides={guides} />
      <Checks page={props.page} visit={seen} timed={!waits} />
    </div>
  );
  return (
    <>
      <article class="note" aria-label={t('preview:outcome.note')}>
        <div class="brief">
          <Outcome page={props.page} view={props.view} />
          <Flags page={props.page} view={props.view} />
          <Facts {...props} />
          <Others {...props} />
          <Show when={!waits && visit}>
            {(seen) => (
              <Load page={props.page} visit={seen()} modelNumber={props.extras.caller.model} />
            )}
          </Show>
        </div>
        <Show when={visit} fallback={<p class="quiet">{t('preview:ranking.none')}</p>}>
          {(seen) => (
            <Show when={waits} fallback={work(seen())}>
              <details class="card">
                <summary>{t(`preview:later.${state === 'stop' ? 'stop' : 'finish'}`)}</summary>
                {work(seen())}
              </details>
            </Show>
          )}
        </Show>
        <Show when={!waits && visit}>{(seen) => <Where page={props.page} visit={seen()} />}</Show>
        <div class="folds">
          <Answers page={props.page} view={props.view} />
          <Show when={!waits && visit}>
            {(seen) => (
              <>
                <MoreFaults page={props.page} visit={seen()} guides={guides} />
                <Kit page={props.page} visit={seen()} />
              </>
            )}
          </Show>
          <LazyDetails
            class="figures"
            title={t('preview:figures.title')}
            failed={t('visits:failed')}
            content={() =>
              import('./Figures.tsx').then(({ Figures }) => () => (
                <Figures {...props} visit={visit} guides={guides} />
              ))
            }
          />
          <Show when={visit}>
            {(seen) => (
              <LazyDetails
                class="record-fold"
                title={t('visits:record.title')}
                failed={t('visits:failed')}
                content={() =>
                  import('../visits/Record.tsx').then(({ RecordVisit }) => () => (
                    <RecordVisit page={props.page} visit={seen()} code={props.reading.code} />
                  ))
                }
              />
            )}
          </Show>
          <p class="ways">
            <button type="button" class="plain" onClick={() => print()}>
              {t('preview:print')}
            </button>
            <CopyJob
              page={props.page}
              view={props.view}
              code={props.reading.code}
              caller={props.extras.caller}
              error={props.extras.error}
            />
          </p>
        </div>
      </article>
      <Paper {...props} visit={visit} />
    </>
  );
}

/** The job sheet, made while the page is printed; where it could not be fetched the page itself is. */
function Paper(props: VisitProps): JSX.Element {
  const [sheet, setSheet] = createSignal<typeof SheetPart>();
  const [printing, setPrinting] = createSignal(false);
  const [before, after] = [() => setPrinting(true), () => setPrinting(false)];
  onMount(() => {
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    void breathe()
      .then(() => import('./Sheet.tsx'))
      .then(({ Sheet }) => setSheet(() => Sheet))
      .catch(() => undefined);
  });
  onCleanup(() => {
    removeEventListener('beforeprint', before);
    removeEventListener('afterprint', after);
  });
  const drives = () => props.view.urgency !== 'emergency' && props.view.urgency !== 'none';
  return (
    <Show when={printing() && sheet()}>
      {(part) => (
        <Dynamic
          component={part()}
          page={props.page}
          title=""
          code={props.reading.code}
          view={props.view}
          caller={props.extras.caller}
          error={props.extras.error}
          work={drives() ? props.visit : undefined}
        />
      )}
    </Show>
  );
}

interface ViewProps {
  readonly page: Page;
  readonly view: VisitView;
}

/** Besides color a shape for each: octagon, triangle, circle, tick. */
const SHAPES = {
  emergency: 'M6 1h8l5 5v8l-5 5H6l-5-5V6z',
  today: 'M10 1 19 18H1z',
  soon: 'M10 1a9 9 0 1 1 0 18 9 9 0 1 1 0-18',
  open: 'M10 1a9 9 0 1 1 0 18 9 9 0 1 1 0-18',
  none: 'M2 10l6 6L18 4l-2-2-8 10-4-4z',
} as const;

function Outcome(props: ViewProps): JSX.Element {
  const t = sayer(props);
  return (
    <section class="card outcome" data-urgency={props.view.urgency}>
      <svg viewBox="0 0 20 20" aria-hidden="true">
        <path d={SHAPES[props.view.urgency]} />
      </svg>
      <div>
        <p class="urgency">
          {t(`preview:outcome.urgency.${props.view.urgency}`)} ·{' '}
          {t(`preview:outcome.${props.view.state}`)}
        </p>
        <h2>{outcomeWords(props.page.words, props.view)}</h2>
        <Show when={props.view.heldBy}>
          {(who) => <p class="held strong">{t(`preview:held.${who()}`)}</p>}
        </Show>
      </div>
    </section>
  );
}

function Flags(props: ViewProps): JSX.Element {
  const t = sayer(props);
  const lines = () => flagLines(props.page.words, props.view);
  return (
    <section class="flags" aria-label={t('preview:flags.title')}>
      <Show when={lines().length > 0} fallback={<p class="quiet">{t('preview:flags.none')}</p>}>
        <ul>
          <For each={lines()}>{(line) => <li>{line}</li>}</For>
        </ul>
      </Show>
    </section>
  );
}

/** The visit's other problems, each a link that shows it with this one beside. */
function Others(props: Props): JSX.Element {
  const t = sayer(props);
  const others = () => props.extras.also;
  const hash = (code: string) => {
    const rest = others().filter((one) => one !== code);
    return hashOf({ c: joined([code, props.reading.code, ...rest]) });
  };
  return (
    <Show when={others().length > 0}>
      <p class="also strong">
        {t('preview:also')}{' '}
        <For each={others()}>{(code) => <a href={hash(code)}>{complaint(props, code)}</a>}</For>
      </p>
    </Show>
  );
}

/** What another code is about; the code itself where it cannot be read. */
function complaint({ page }: Pick<Props, 'page'>, code: string): string {
  const reading = readCode(code, page.codebooks);
  return reading.kind === 'exact' ? guideName(page.words, reading.note.guide) : code;
}

function Facts(props: Props): JSX.Element {
  const t = sayer(props);
  const errors = () => [props.reading.note.error, props.extras.error].filter((text) => text);
  return (
    <ul class="facts" aria-label={t('preview:facts')}>
      <li>
        <Show when={errors().length > 0} fallback={t('preview:error.none')}>
          {t('preview:error.title')}:
        </Show>
        <For each={errors()}>
          {(text) => (
            <>
              {' '}
              <bdi class="display">{text}</bdi>
            </>
          )}
        </For>
      </li>
      <For each={knownFacts(props.page.words, props.extras.caller, props.reading.note)}>
        {({ label, text }) => (
          <li>
            {label} <bdi>{text}</bdi>
          </li>
        )}
      </For>
    </ul>
  );
}
