import { For, Show, type JSX } from 'solid-js';
import { joined } from '../../visit/hand-over.ts';
import type { Caller } from '../../visit/job.ts';
import { qrPath } from '../note/qr.ts';
import { guideName, stepWords } from '../shared/content-words.ts';
import { previewLink } from '../shared/job-text.ts';
import { name, names, resultName } from '../shared/staff-words.ts';
import { sayer, type Words } from '../shared/words.ts';
import { Pairs } from './Pairs.tsx';
import { flagLines, knownFacts, named, outcomeWords, type Coded } from './told.ts';
import { minutes } from './facts.ts';
import { odds } from './odds.ts';
import { asksModel, checkIn, likely, loaded, needed, type Work } from './work.ts';

/** A visit as a sheet has it: one without a code is a caller and lines to write on. */
export interface SheetProps {
  readonly page: { readonly words: Words };
  /** What stands at its head besides the codes. */
  readonly title: string;
  /** The most urgent first. */
  readonly problems: readonly Coded[];
  readonly caller: Caller;
  readonly error?: string | undefined;
  /** What else a list said of it. */
  readonly others?: readonly string[];
  readonly work: Work | undefined;
}

/** As many as a page holds. */
const MOST_CHECKS = 5;
const MOST_FAULTS = 3;
/** Lines to write on. */
const known = ['name', 'phone', 'address', 'time', 'model', 'serial'] as const;
const blanks = ['found', 'used', 'spent', 'remark', 'signed'] as const;

/** The visit on one sheet of paper: what to know, what to load, boxes to tick, lines to write on. */
export function Sheet(props: SheetProps): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const notes = () => props.problems.map(({ seen }) => seen.note);
  const complaint = ({ guide }: Coded['seen']) =>
    props.problems.length > 1 ? guideName(words(), guide.id) : undefined;
  const errors = () => [...notes().map((note) => note.error), props.error ?? ''].filter(Boolean);
  const others = () => [
    errors().length === 0
      ? t('preview:error.none')
      : `${t('preview:error.title')}: ${[...new Set(errors())].join(', ')}`,
    ...knownFacts(words(), props.caller, notes())
      .filter(({ id }) => !known.some((blank) => blank === id))
      .map(({ label, text }) => `${label} ${text}`),
    ...(props.others ?? []),
  ];
  return (
    <section class="sheet" aria-label={t('preview:sheet.title')}>
      <header>
        <div>
          <p>{props.title}</p>
          <For each={props.problems} fallback={<p class="code">{t('job:lines.none')}</p>}>
            {({ code, seen }) => (
              <>
                <p class="code">{code}</p>
                <p class="urgency">{t(`preview:outcome.urgency.${seen.urgency}`)}</p>
                <p>
                  {t(`preview:outcome.${seen.state}`)}:{' '}
                  {named(complaint(seen), outcomeWords(words(), seen))}
                </p>
                <Show when={seen.heldBy}>
                  {(who) => <p class="strong">{t(`preview:held.${who()}`)}</p>}
                </Show>
              </>
            )}
          </For>
        </div>
        <Show when={props.problems.length > 0}>
          <Qr code={joined(props.problems.map(({ code }) => code))} />
        </Show>
      </header>
      <Pairs
        class="blanks"
        rows={known.map((blank) => [t(`job:lines.${blank}`), props.caller[blank]])}
      />
      <ul class="warned">
        <For each={flagLines(words(), props.problems)}>{(line) => <li>{line}</li>}</For>
      </ul>
      <p>{others().join(' · ')}</p>
      <Show when={props.work}>
        {(work) => <ToDo page={props.page} work={work()} model={props.caller.model} />}
      </Show>
      <For each={props.problems}>
        {({ seen, seen: { steps, guide } }) => (
          <>
            <h2>{named(complaint(seen), t('preview:answers.title', { count: steps.length }))}</h2>
            <p class="told">
              {steps.map((step) => stepWords(words(), guide, step).join(': ')).join(' · ')}
            </p>
          </>
        )}
      </For>
      <Pairs class="blanks" rows={blanks.map((blank) => [t(`preview:sheet.${blank}`), ''])} />
    </section>
  );
}

function Qr(props: { readonly code: string }): JSX.Element {
  const qr = () => qrPath(previewLink(props.code));
  return (
    <svg viewBox={`0 0 ${qr().size} ${qr().size}`} shape-rendering="crispEdges" aria-hidden="true">
      <path d={qr().path} />
    </svg>
  );
}

/** Load, faults and checks, each with its box. */
function ToDo(
  props: Pick<SheetProps, 'page'> & { readonly work: Work; readonly model: string | undefined },
): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const checks = () =>
    props.work
      .steps()
      .slice(0, MOST_CHECKS)
      .flatMap((step) => {
        const check = checkIn(props.work.problems, step.check)?.check;
        return check ? [{ check, step }] : [];
      });
  return (
    <>
      <h2>{t('preview:load.title')}</h2>
      <ul class="boxes">
        <For each={loaded(props.work)} fallback={<li>{t('preview:load.noParts')}</li>}>
          {({ id }) => <li>{name(words(), 'parts', id)}</li>}
        </For>
        <Show when={asksModel(props.work, props.model)}>
          <li>{t('preview:load.callModel')}</li>
        </Show>
      </ul>
      <p class="told">{names(words(), 'tools', needed(props.work, 'tools'))}</p>
      <h2>{t('preview:ranking.title')}</h2>
      <For each={props.work.problems}>
        {(one) => (
          <p>
            {likely(one)
              .slice(0, MOST_FAULTS)
              .map(
                ({ fault, share }) => `${name(words(), 'faults', fault)}, ${odds(words(), share)}`,
              )
              .join(' · ')}
          </p>
        )}
      </For>
      <h2>{t('preview:plan.title')}</h2>
      <p class="told">{words().list('diagnosis:everyCheck').join(' ')}</p>
      <ol>
        <For each={checks()}>
          {({ check, step }) => (
            <li>
              <strong>{name(words(), 'checks', check.id)}</strong>, {minutes(words(), step.minutes)}
              <ul class="boxes">
                <For each={check.results}>
                  {({ id }) => <li>{resultName(words(), check.id, id)}</li>}
                </For>
              </ul>
            </li>
          )}
        </For>
      </ol>
    </>
  );
}
