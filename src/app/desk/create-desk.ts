/**
 * The state of one call. The journey, the display's text and the details ride in the address's
 * fragment; all about the caller stays in this tab's memory.
 */
import { createMemo, createSignal, onCleanup } from 'solid-js';
import { defined } from '../../defined.ts';
import { fragmentHash, parseFragment, type Fragment } from '../../address/fragment.ts';
import { formatJourney } from '../../address/journey-text.ts';
import {
  answerDanger,
  change,
  emptyJourney,
  pageKey,
  takeOver,
  type EditableJourney,
} from '../../journey/edit.ts';
import { edgeAt, trace } from '../../journey/trace.ts';
import { madeOn } from '../../note/day.ts';
import type { GraphNode } from '../../guide/types.ts';
import type { CodebookGuide } from '../../note/codebook.ts';
import type { Note } from '../../note/types.ts';
import { localDay } from '../note/code.ts';
import { waitMinutes } from '../../journey/wait.ts';
import { replaceHash } from '../shared/replace-hash.ts';
import type { Key } from '../shared/keys.ts';
import type { CallerState } from './caller.ts';
import { pageTime } from './clocks.ts';
import { deskNodeOf, cautionsOf, choicesOf, UNSURE } from './nodes.ts';
import type { Page } from './page.ts';
import type { DeskState, DeskStatus, View } from './state.ts';
import { withoutUnseen } from './unseen.ts';

const NOTHING: Fragment = { journey: [], details: {} };
/** Milliseconds between two notes of how far a wait has come. */
const NOTED = 15_000;

/** What may stand in the desk's address: never the caller's model number or a remark. */
function addressable(
  { error, details, made, timer }: Fragment,
  { journey }: EditableJourney,
  guide: string | undefined,
): Fragment {
  return {
    journey,
    details,
    ...defined({ error: error === '' ? undefined : error, timer }),
    ...(journey.length > 0 ? defined({ guide, made }) : {}),
  };
}

/** What a call's desk cannot do alone. */
export interface Around {
  /** The guide that an address need not name. */
  readonly main: string;
  /** A note of another guide is taken over by that guide's desk. */
  readonly onOther: (note: Note) => void;
  /** The call is over and all of it gone. */
  readonly onNext: () => void;
}

export function createDesk(
  page: Page,
  guide: CodebookGuide,
  caller: CallerState,
  around: Around,
): DeskState {
  const [number, setNumber] = createSignal(0);
  const [edited, setEdited] = createSignal(emptyJourney);
  const [fragment, setFragment] = createSignal(NOTHING);
  const [asked, setAsked] = createSignal(false);
  const [open, setOpen] = createSignal<'danger' | 'code'>();
  const [index, setIndex] = createSignal<number>();
  const [read, setRead] = createSignal<ReadonlySet<string>>(new Set());
  const [found, setFound] = createSignal<readonly Key[]>([]);
  const [status, setStatus] = createSignal<DeskStatus>();
  const [readBack, setReadBack] = createSignal<string>();
  let code: string | undefined;
  const [asksNext, setAsksNext] = createSignal(false);

  const traced = createMemo(() => trace(guide, edited().journey));
  const view = createMemo((): View => {
    const opened = open();
    if (opened === 'code') return { kind: 'code' };
    if (opened === 'danger' || !asked()) return { kind: 'danger' };
    return { kind: 'at', index: index() ?? edited().journey.length };
  });
  const node = createMemo(() => {
    const now = view();
    if (now.kind !== 'at') return guide.first;
    return traced().steps[now.index]?.node ?? traced().end;
  });
  const present = () => {
    const now = view();
    return edited().journey[now.kind === 'at' ? now.index : 0]?.answer;
  };
  const isRead = (one: GraphNode) => read().has(pageKey(one));
  const mustRead = () =>
    cautionsOf(page.words, guide, node()).length > 0 && view().kind === 'at' && !isRead(node());

  const keep = (parts: Fragment): void => {
    const named = guide.id === around.main ? undefined : guide.id;
    const now = addressable(parts, edited(), named);
    setFragment(now);
    replaceHash(fragmentHash(now));
  };
  /** A call changed by an answer: the note is of today then, and a timer runs on only at its step. */
  const take = (next: EditableJourney, at: number): void => {
    const { timer, ...parts } = fragment();
    const stays = timer?.node === trace(guide, next.journey).end.id;
    const changed = next !== edited();
    const count = next.journey.length - at - 1;
    setEdited(next);
    if (changed)
      keep({
        ...parts,
        made: localDay(new Date()),
        ...defined({ timer: stays ? timer : undefined }),
      });
    setIndex(undefined);
    setStatus(changed && count > 0 ? { key: 'desk:status.kept', facts: { count } } : undefined);
  };
  const reset = (): void => {
    setAsked(false);
    setOpen(undefined);
    setIndex(undefined);
    setRead(new Set<string>());
    setReadBack(undefined);
    setStatus(undefined);
    setAsksNext(false);
  };
  const seconds = (): number => Math.floor(pageTime() / 1000);
  /** Of the step that the call is at, in seconds. */
  const waitHere = (): number | undefined => {
    const { end, heatEnded } = traced();
    const { timer } = deskNodeOf(page, end);
    return timer && waitMinutes(timer, heatEnded) * 60;
  };
  const restored = (timer: Fragment['timer']) => {
    const length = waitHere();
    if (!timer || length === undefined || timer.node !== traced().end.id) return undefined;
    return withoutUnseen(timer, length, seconds());
  };
  const noted = setInterval(() => {
    const { timer, ...parts } = fragment();
    if (timer) keep({ ...parts, timer: { ...timer, counted: seconds() } });
  }, NOTED);
  onCleanup(() => clearInterval(noted));
  const openAddress = (hash: string): void => {
    const { fragment: given, problems } = parseFragment(hash);
    const taken = takeOver(guide, given.journey);
    reset();
    setEdited(taken);
    const unseen = restored(given.timer);
    keep({ ...given, ...defined({ timer: unseen }) });
    if (given.model) caller.set('model', given.model);
    if (given.remark) caller.set('remark', given.remark);
    const astray = formatJourney(taken.journey) !== formatJourney(given.journey);
    setFound([
      ...(astray ? (['desk:told.astray'] as const) : []),
      ...(unseen ? (['desk:told.unseen'] as const) : []),
      ...new Set(problems.map(({ code }): Key => `desk:told.${code}`)),
    ]);
    code = given.code;
    if (code !== undefined) setOpen('code');
  };

  const choose = (answer: string): void => {
    const now = view();
    if (now.kind === 'code' || !edgeAt(guide, node(), answer)) return;
    if (now.kind === 'at') {
      if (mustRead()) setStatus({ key: 'desk:status.careFirst' });
      else take(change(guide, edited(), now.index, answer), now.index);
      return;
    }
    const length = edited().journey.length;
    const next =
      length === 0 ? change(guide, edited(), 0, answer) : answerDanger(guide, edited(), answer);
    setAsked(true);
    setOpen(undefined);
    take(next, next.journey.length > length ? length : 0);
  };

  /** Left for a reload to know by that something was written; what was, is not. */
  const mark = (filled: boolean): void => history.replaceState({ filled }, '');
  const wasFilled = (history.state as { filled?: boolean } | null)?.filled === true;
  openAddress(location.hash);
  if (caller.restored) setFound(['desk:told.restored', ...found()]);
  else if (edited().journey.length > 0 || wasFilled) setFound(['desk:told.reloaded', ...found()]);
  mark(caller.restored);
  // What is in the fields belongs to the call the address had before.
  const moved = (): void => {
    caller.clear();
    openAddress(location.hash);
    mark(false);
    setFound(['desk:told.reloaded', ...found()]);
  };
  addEventListener('hashchange', moved);
  onCleanup(() => removeEventListener('hashchange', moved));

  return {
    guide,
    number,
    edited,
    traced,
    fragment,
    view,
    node,
    present,
    found,
    status,
    isRead,
    mustRead,
    caller,
    readBack,
    asksNext,
    brought() {
      const once = code;
      code = undefined;
      return once;
    },
    choose,
    press(key) {
      if (view().kind === 'code' || node().answers.length === 0) return;
      const choices = choicesOf(node());
      const chosen = choices.find((choice) => choice.key === key);
      if (chosen) choose(chosen.edge.id);
      else if (key === '0') choose(UNSURE);
      else setStatus({ key: 'desk:status.noAnswer', facts: { nth: key } });
    },
    tick() {
      if (view().kind !== 'at') return;
      setRead(new Set([...read(), pageKey(node())]));
      setStatus(undefined);
    },
    go(to) {
      if (!asked()) return;
      setOpen(undefined);
      const { length } = edited().journey;
      setIndex(to < length ? Math.max(0, to) : undefined);
      setStatus(undefined);
    },
    show(what) {
      if (what === 'now') setIndex(undefined);
      setOpen(what === 'now' ? undefined : what);
      setStatus(undefined);
    },
    note: (parts) => keep({ ...fragment(), ...parts }),
    resume(note) {
      if (note.guide !== guide.id) {
        around.onOther(note);
        return;
      }
      reset();
      const taken = takeOver(guide, note.journey);
      setEdited(taken);
      const { latest } = madeOn(note.day, new Date());
      const made = latest.toISOString().slice(0, 10);
      keep({ journey: [], details: note.details, error: note.error, made });
      const count = taken.journey.length;
      setStatus({ key: 'desk:status.resumed', facts: { count } });
      if (count < note.journey.length) setFound(['desk:told.astray']);
    },
    startTimer() {
      const length = waitHere();
      if (length === undefined || view().kind !== 'at' || index() !== undefined)
        return void setStatus({ key: 'desk:status.noTimer' });
      const counted = seconds();
      keep({ ...fragment(), timer: { node: node().id, end: counted + 1 + length, counted } });
    },
    say: setStatus,
    understood: () => setFound([]),
    confirmReadBack: setReadBack,
    write(field, text) {
      caller.set(field, text);
      mark(Object.keys(caller.caller()).length > 0);
    },
    clearCaller() {
      caller.clear();
      mark(false);
      setStatus({ key: 'desk:status.cleared' });
    },
    next(sure) {
      if (sure === 'yes' || (sure === 'ask' && asksNext())) {
        caller.clear();
        mark(false);
        setEdited(emptyJourney);
        reset();
        keep(NOTHING);
        setFound([]);
        setNumber(number() + 1);
        setStatus({ key: 'desk:status.started' });
        around.onNext();
      } else setAsksNext(sure === 'ask');
    },
  };
}
