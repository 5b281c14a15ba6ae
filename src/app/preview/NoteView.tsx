import { For, Show, createMemo, createSignal, onMount, type JSX } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { hashOf } from '../../address/grammar.ts';
import { isRecord } from '../../guide/shape.ts';
import { readCode } from '../../note/read.ts';
import type { Reading } from '../../note/types.ts';
import { codesIn, exactOf, joined } from '../../visit/hand-over.ts';
import { byUrgency, readVisit } from '../../visit/read-visit.ts';
import { LazyDetails } from '../visits/LazyDetails.tsx';
import { CopyJob } from '../shared/CopyJob.tsx';
import { guideName } from '../shared/content-words.ts';
import { Fetching } from '../shared/Fetching.tsx';
import { breathe } from '../shared/breathe.ts';
import { createAllFetched } from '../shared/fetched.ts';
import { createPrinting } from '../shared/printing.ts';
import { pageWords, sayer } from '../shared/words.ts';
import { Answers, type ViewProps } from './Answers.tsx';
import { Checks } from './Checks.tsx';
import { Faults, MoreFaults } from './Faults.tsx';
import { Kit, Load } from './Load.tsx';
import type { Page, PreviewPart } from './page.ts';
import { Where } from './Where.tsx';
import type { Sheet as SheetPart } from './Sheet.tsx';
import type { Extras } from './state.ts';
import { flagLines, knownFacts, named, outcomeWords, type Problems } from './told.ts';
import { createVisit, type ProblemState, type VisitState } from './visit.ts';

// The first code brings this part, and what makes its codebook with it.
export { makeCodebooks } from '../../note/codebook.ts';

interface Props {
  readonly page: Page;
  readonly reading: Extract<Reading, { kind: 'exact' }>;
  readonly extras: Extras;
}

/** The words of two guides' parts together. */
const merged = (a: unknown, b: unknown): unknown =>
  isRecord(a) && isRecord(b)
    ? {
        ...a,
        ...Object.fromEntries(Object.entries(b).map(([key, is]) => [key, merged(a[key], is)])),
      }
    : b;

/** What a code says, and what those of the same visit's other problems do; the most urgent first. */
export function NoteView(props: Props): JSX.Element {
  const also = createMemo(() => joined(props.extras.also));
  const codes = createMemo(() => [
    props.reading,
    ...exactOf(codesIn(also()), props.page.codebooks),
  ]);
  /** A guide that the site no longer has is shown by the names in its codebook. */
  const files = () => [
    ...new Set(codes().flatMap(({ note }) => props.page.files[note.guide] ?? [])),
  ];
  const fetched = createAllFetched<PreviewPart>(files);
  const page = createMemo((): Page | undefined => {
    const parts = fetched.value();
    const all = parts?.reduce<unknown>(merged, {}) as Partial<PreviewPart> | undefined;
    return all && { ...props.page, ...all, words: pageWords(all.texts) };
  });
  const problems = createMemo((): Problems | undefined => {
    const figures = page();
    if (!figures) return undefined;
    const [first, ...others] = byUrgency(
      codes().map(({ code, note }) => ({
        code,
        seen: readVisit(note, props.page.codebooks, figures),
      })),
    );
    return first && [first, ...others];
  });
  return (
    <Show when={page()} fallback={<Fetching words={props.page.words} fetched={fetched} />}>
      {(loaded) => (
        <Show when={problems()} keyed>
          {/* Another code is another visit. */}
          {(list) => <Visit {...props} page={loaded()} problems={list} />}
        </Show>
      )}
    </Show>
  );
}

type VisitProps = Props & { readonly problems: Problems };

function Visit(props: VisitProps): JSX.Element {
  const t = sayer(props);
  // Another code makes another one of us: what is read here does not change.
  // eslint-disable-next-line solid/reactivity
  const { problems } = props;
  const [first] = problems;
  const known = problems.flatMap(({ code, seen: { model, evidence, last, legs } }) =>
    model
      ? [{ code, model, answers: evidence, guides: [last, ...legs.map(({ guide }) => guide)] }]
      : [],
  );
  const visit = known.length > 0 ? createVisit(known, first.code) : undefined;
  const stateOf = (code: string) => visit?.problems[known.findIndex((one) => one.code === code)];
  /** Which of several. */
  const nameOf = (code: string | undefined) => {
    const of = problems.find((one) => one.code === code)?.seen.guide.id;
    return of !== undefined && problems.length > 1 ? guideName(props.page.words, of) : undefined;
  };
  const { state, urgency } = first.seen;
  /** Nobody is to drive there yet, or need not at all. */
  const waits = urgency === 'emergency' || urgency === 'none';
  const each = (show: (one: ProblemState, of: string | undefined) => JSX.Element) =>
    visit?.problems.map((one, index) => show(one, nameOf(known[index]?.code)));
  const work = (seen: VisitState) => (
    <div class="work">
      {each((one, of) => (
        <Faults page={props.page} visit={one} of={of} />
      ))}
      <Checks page={props.page} visit={seen} timed={!waits} />
    </div>
  );
  return (
    <>
      <article class="note" aria-label={t('preview:outcome.note')}>
        <div class="brief">
          <For each={problems}>
            {({ code, seen }) => <Outcome page={props.page} view={seen} of={nameOf(code)} />}
          </For>
          <Flags {...props} />
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
        <Show when={!waits && problems.length === 1 && visit?.problems[0]}>
          {(one) => <Where page={props.page} visit={one()} />}
        </Show>
        <div class="folds">
          <For each={problems}>
            {({ code, seen }) => <Answers page={props.page} view={seen} of={nameOf(code)} />}
          </For>
          <Show when={!waits && visit}>
            {(seen) => (
              <>
                {each((one, of) => (
                  <MoreFaults page={props.page} visit={one} of={of} />
                ))}
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
                <For each={problems}>
                  {(one) => <Figures page={props.page} {...one} visit={stateOf(one.code)} />}
                </For>
              ))
            }
          />
          <For each={known}>
            {({ code }, index) => (
              <LazyDetails
                class="record-fold"
                title={named(nameOf(code), t('visits:record.title'))}
                failed={t('visits:failed')}
                content={() =>
                  import('../visits/Record.tsx').then(({ RecordVisit }) => () => (
                    <Show when={visit?.problems[index()]}>
                      {(one) => <RecordVisit page={props.page} visit={one()} code={code} />}
                    </Show>
                  ))
                }
              />
            )}
          </For>
          <p class="ways">
            <button type="button" class="plain" onClick={() => print()}>
              {t('preview:print')}
            </button>
            <CopyJob
              page={props.page}
              problems={problems}
              caller={props.extras.caller}
              error={props.extras.error}
            />
          </p>
        </div>
      </article>
      <Paper {...props} work={waits ? undefined : visit} />
    </>
  );
}

/** The job sheet, made while the page is printed; where it could not be fetched the page itself is. */
function Paper(props: VisitProps & { readonly work: VisitState | undefined }): JSX.Element {
  const [sheet, setSheet] = createSignal<typeof SheetPart>();
  const printing = createPrinting();
  onMount(() => {
    void breathe()
      .then(() => import('./Sheet.tsx'))
      .then(({ Sheet }) => setSheet(() => Sheet))
      .catch(() => undefined);
  });
  return (
    <Show when={printing() && sheet()}>
      {(part) => (
        <Dynamic
          component={part()}
          page={props.page}
          title=""
          problems={props.problems}
          caller={props.extras.caller}
          error={props.extras.error}
          work={props.work}
        />
      )}
    </Show>
  );
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
        <h2>{named(props.of, outcomeWords(props.page.words, props.view))}</h2>
        <Show when={props.view.heldBy}>
          {(who) => <p class="held strong">{t(`preview:held.${who()}`)}</p>}
        </Show>
      </div>
    </section>
  );
}

function Flags(props: VisitProps): JSX.Element {
  const t = sayer(props);
  const lines = () => flagLines(props.page.words, props.problems);
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

/** Codes of the visit's other problems that cannot be read as they are: each a link to read it first. */
function Others(props: VisitProps): JSX.Element {
  const t = sayer(props);
  const others = () =>
    props.extras.also.filter((code) => readCode(code, props.page.codebooks).kind !== 'exact');
  const hash = (code: string) =>
    hashOf({ c: joined([code, ...props.problems.map((one) => one.code)]) });
  return (
    <Show when={others().length > 0}>
      <p class="also strong">
        {t('preview:also')} <For each={others()}>{(code) => <a href={hash(code)}>{code}</a>}</For>
      </p>
    </Show>
  );
}

function Facts(props: VisitProps): JSX.Element {
  const t = sayer(props);
  const notes = () => props.problems.map(({ seen }) => seen.note);
  const errors = () =>
    new Set([...notes().map(({ error }) => error), props.extras.error].filter((text) => text));
  return (
    <ul class="facts" aria-label={t('preview:facts')}>
      <li>
        <Show when={errors().size > 0} fallback={t('preview:error.none')}>
          {t('preview:error.title')}:
        </Show>
        <For each={[...errors()]}>
          {(text) => (
            <>
              {' '}
              <bdi class="display">{text}</bdi>
            </>
          )}
        </For>
      </li>
      <For each={knownFacts(props.page.words, props.extras.caller, notes())}>
        {({ label, text }) => (
          <li>
            {label} <bdi>{text}</bdi>
          </li>
        )}
      </For>
    </ul>
  );
}
