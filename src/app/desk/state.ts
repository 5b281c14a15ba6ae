/** The state of one call, put together of small stores; how its parts get at it. */
import { batch, createMemo, createSignal } from 'solid-js';
import { defined } from '../../defined.ts';
import { fragmentHash, parseFragment } from '../../address/fragment.ts';
import { latestDay } from '../../note/day.ts';
import type { CodebookGuide } from '../../note/codebook.ts';
import type { Note, NoteCode } from '../../note/types.ts';
import { nodeWords } from '../shared/content-words.ts';
import { localDay } from '../note/code.ts';
import type { Key } from '../shared/keys.ts';
import { createAddress, wasFilled } from './address.ts';
import { callerFields, type Caller } from '../../visit/job.ts';
import type { HandOver } from '../../visit/hand-over.ts';
import type { CallRecord } from './calls.ts';
import type { CallerState } from './caller.ts';
import { pageTime, type Clocks } from './clocks.ts';
import { createJourney, type DeskStatus } from './journey.ts';
import { deskNodeOf } from './nodes.ts';
import type { Outcome } from './outcome.ts';
import type { Page } from './page.ts';
import { createSeen } from './seen.ts';
import { createSure } from './shortcuts.ts';
import { createWait } from './wait.ts';

/** What a call's desk cannot do alone. */
export interface Around {
  /** The guide that an address need not name. */
  readonly main: string;
  /** Another guide's desk takes over, and does the rest. */
  readonly onOther: (guide: string, then: (desk: DeskState) => void) => void;
  /** The call makes way for the next one: over, or on hold. */
  readonly onNext: (held: boolean) => void;
  /** Another problem of the same caller, whose codes so far these are. */
  readonly onAlso: (codes: readonly NoteCode[]) => void;
  /** Take back the call that was over last; says whether there was one. */
  readonly takeBack: () => boolean;
}

export type DeskState = ReturnType<typeof createDesk>;

/** Props of the desk's parts. */
export interface DeskProps {
  readonly page: Page;
  readonly desk: DeskState;
}

/** What is made of a call's state: times, its code and job. */
export interface Made {
  readonly clocks: Clocks;
  readonly outcome: Outcome;
}

/** How a call was found: in the address when the page was loaded, or by an address put in since. */
export type Found = 'reload' | 'address';

/** A call as the desk finds it. */
export interface Begun {
  readonly how: Found;
  /** A call of this tab that is taken up again. */
  readonly record: CallRecord | undefined;
  /** Milliseconds since 1970. */
  readonly began: number;
  /** Codes of the same caller's problems told before, for the same visit. */
  readonly also: readonly NoteCode[];
}

/** Begins with a call taken up again, or with what the address says. */
export function createDesk(
  page: Page,
  guide: CodebookGuide,
  caller: CallerState,
  around: Around,
  { record, how, began, also }: Begun,
) {
  const [found, setFound] = createSignal<readonly Key[]>([]);
  const [status, say] = createSignal<DeskStatus>();
  const [readBack, confirmReadBack] = createSignal(record?.readBack);
  const [answered, setAnswered] = createSignal(record?.answered);
  const [copied, setCopied] = createSignal(record?.copied);
  const sure = createSure();
  /** What takes back what was done, the last thing last. */
  const undos: (() => void)[] = [];

  const journey = createJourney(
    page.words,
    guide,
    say,
    (before) => {
      undos.push(() => journey.restore(before));
      address.note({ made: localDay(new Date()) });
      setAnswered(pageTime());
      wait.stopElsewhere();
    },
    (node) => deskNodeOf(page, node).each,
  );
  const wait = createWait(page, journey, say, answered);
  const named = guide.id === around.main ? undefined : guide.id;
  const told = createMemo(() =>
    journey
      .traced()
      .steps.reduce<Record<string, string>>(
        (all, { node, edge }) => ({ ...all, ...deskNodeOf(page, node).tells?.[edge.id] }),
        {},
      ),
  );
  const address = createAddress(named, journey, told, wait, caller, began);
  const seen = createSeen(journey.spot);

  const load = (hash: string, pages: readonly string[] = []): void => {
    const { fragment, problems } = parseFragment(hash);
    const { details, error, made, model, remark, code } = fragment;
    const fits = journey.open(fragment.journey, pages);
    const unseen = wait.restore(fragment.timer, record !== undefined);
    address.set({ details, ...defined({ error, made }) });
    if (model) caller.set('model', model);
    if (remark) caller.set('remark', remark);
    setFound([
      ...(fits ? [] : (['desk:told.astray'] as const)),
      ...(unseen ? (['desk:told.unseen'] as const) : []),
      ...new Set(problems.map((problem): Key => `errors:fragment.${problem.code}`)),
    ]);
    if (code !== undefined) journey.show('code', code);
  };
  const before = wasFilled();
  load(record?.hash ?? location.hash, record?.read);
  if (!record) {
    const lost = how === 'reload' ? 'desk:told.reloaded' : 'desk:told.linked';
    if (caller.restored && how === 'reload') setFound(['desk:told.restored', ...found()]);
    else if (journey.length() > 0 || before) setFound([lost, ...found()]);
  }
  const whenSeen = (act: () => void): void => {
    if (seen()) act();
    else say({ key: 'desk:status.tooSoon' });
  };
  const fillCaller = (from: Caller): void => {
    for (const field of callerFields)
      if (!caller.caller()[field]) caller.set(field, from[field] ?? '');
  };
  const hashNow = (): string => fragmentHash(address.fragment());

  return {
    guide,
    journey,
    wait,
    caller,
    address,
    /** The details that the answers tell by themselves. */
    told,
    sure,
    /** Milliseconds since 1970. */
    began,
    answered,
    /** The job's text as it was last copied. */
    copied,
    setCopied,
    /** What to know about how this call was found; shown until it is understood. */
    found,
    understood: () => setFound([]),
    status,
    say,
    seen,
    /** What the caller answers and staff mark counts only for what has been on the screen. */
    press: (key: string) => whenSeen(() => journey.press(key)),
    choose: (answer: string) => whenSeen(() => journey.choose(answer)),
    tick: () => whenSeen(() => journey.tick()),
    /** The code the caller has read back without a difference. */
    readBack,
    confirmReadBack,
    /**
     * @param came what came with the note that was handed over: it fills what is empty
     * @param code the note's code, where the caller has confirmed it
     */
    resume(note: Note, came?: HandOver, code?: string): void {
      fillCaller(came?.caller ?? {});
      if (note.guide !== guide.id) {
        around.onOther(note.guide, (other) => other.resume(note, came, code));
        return;
      }
      const { details } = note;
      const { error = note.error } = came ?? {};
      const [hash, pages] = [hashNow(), journey.read()];
      batch(() => {
        if (journey.length() > 0) undos.push(() => load(hash, pages));
        if (!journey.open(note.journey)) setFound(['desk:told.astray']);
        wait.restore(undefined);
        address.set({ details, error, made: latestDay(note.day, new Date()) });
        confirmReadBack(code);
        const { answered: at } = came ?? {};
        // By another machine's clock: never later than now.
        setAnswered(at === undefined ? undefined : Math.min(Date.parse(at), pageTime()));
        // From a phone of their own, where the pages showed it to them.
        if (!came?.caller || Object.keys(came.caller).length === 0) journey.shownElsewhere();
        say({ key: 'desk:status.resumed', facts: { count: journey.length() } });
      });
    },
    startTimer(): void {
      const before = wait.timer();
      wait.start();
      if (before) undos.push(() => wait.restore(before, true));
    },
    /** A call handed over before any answer was given. */
    takeOver(from: Caller): void {
      fillCaller(from);
      journey.show('now');
    },
    askClear(): void {
      const texts = caller.caller();
      if (caller.isEmpty()) return;
      sure.ask({
        ask: 'desk:bar.sureClear',
        yes() {
          caller.clear();
          undos.push(() => caller.load(texts));
          say({ key: 'desk:status.cleared' });
        },
      });
    },
    /** @param uncopied the job's text was never copied as it is now */
    askEnd(uncopied: boolean): void {
      const ask = uncopied ? 'desk:bar.sureUncopied' : 'desk:bar.sure';
      sure.ask({ ask, yes: () => around.onNext(false) });
    },
    hold: () => around.onNext(true),
    also,
    /** The caller has another problem: the call goes on with it, this code kept for the visit. */
    another: (code: NoteCode) => around.onAlso([...also, code]),
    undo(): void {
      const last = undos.pop();
      if (last) {
        batch(last);
        say({ key: 'desk:status.undone' });
      } else if (!around.takeBack()) say({ key: 'desk:status.noUndo' });
    },
    record(held: boolean): Omit<CallRecord, 'id'> {
      return {
        ...{ guide: guide.id, hash: hashNow(), caller: caller.caller(), read: journey.read() },
        ...{ readBack: readBack(), began, answered: answered(), also },
        ...{ copied: copied(), held, at: nodeWords(page.words, guide, journey.traced().end).short },
      };
    },
  };
}
