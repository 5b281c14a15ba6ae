/** The state of one call, put together of small stores; how its parts get at it. */
import { batch, createSignal, onCleanup } from 'solid-js';
import { defined } from '../../defined.ts';
import { parseFragment } from '../../address/fragment.ts';
import { madeOn } from '../../note/day.ts';
import type { CodebookGuide } from '../../note/codebook.ts';
import type { Note } from '../../note/types.ts';
import { localDay } from '../note/code.ts';
import type { Key } from '../shared/keys.ts';
import { createAddress, wasFilled } from './address.ts';
import { callerFields, type Caller } from '../../visit/job.ts';
import type { CallerState } from './caller.ts';
import type { Clocks } from './clocks.ts';
import { createJourney, type DeskStatus } from './journey.ts';
import type { Outcome } from './outcome.ts';
import type { Page } from './page.ts';
import type { Shortcuts } from './shortcuts.ts';
import { createWait } from './wait.ts';

/** What a call's desk cannot do alone. */
export interface Around {
  /** The guide that an address need not name. */
  readonly main: string;
  /** A note of another guide is taken over by that guide's desk. */
  readonly onOther: (note: Note) => void;
  /** The call is over and all of it gone. */
  readonly onNext: () => void;
}

export type DeskState = ReturnType<typeof createDesk>;

/** Props of the desk's parts. */
export interface DeskProps {
  readonly page: Page;
  readonly desk: DeskState;
}

/** What is made of a call's state: times, its code and job, the keys. */
export interface Made {
  readonly clocks: Clocks;
  readonly outcome: Outcome;
  readonly shortcuts: Shortcuts;
}

/** Begins with what the address says. */
export function createDesk(page: Page, guide: CodebookGuide, caller: CallerState, around: Around) {
  const [number, setNumber] = createSignal(0);
  const [found, setFound] = createSignal<readonly Key[]>([]);
  const [status, say] = createSignal<DeskStatus>();
  const [readBack, confirmReadBack] = createSignal<string>();
  const [endAsked, setEndAsked] = createSignal(false);

  const journey = createJourney(page.words, guide, say, () => {
    address.note({ made: localDay(new Date()) });
    wait.stopElsewhere();
  });
  const wait = createWait(page, journey, say);
  const named = guide.id === around.main ? undefined : guide.id;
  const address = createAddress(named, journey, wait, caller);

  const forget = (): void => {
    confirmReadBack(undefined);
    setEndAsked(false);
    say(undefined);
  };
  const load = (): void => {
    const { fragment, problems } = parseFragment(location.hash);
    const { details, error, made, model, remark, code } = fragment;
    forget();
    const fits = journey.open(fragment.journey);
    const unseen = wait.restore(fragment.timer);
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
  load();
  if (caller.restored) setFound(['desk:told.restored', ...found()]);
  else if (journey.length() > 0 || before) setFound(['desk:told.reloaded', ...found()]);
  const moved = (): void =>
    batch(() => {
      // What is in the fields belongs to the call the address had before.
      caller.clear();
      load();
      setFound(['desk:told.reloaded', ...found()]);
    });
  addEventListener('hashchange', moved);
  onCleanup(() => removeEventListener('hashchange', moved));

  return {
    guide,
    /** Which call of this tab it is, from 0. */
    number,
    journey,
    wait,
    caller,
    address,
    /** What to know about how this call was found; shown until it is understood. */
    found,
    understood: () => setFound([]),
    status,
    say,
    /** The code the caller has read back without a difference. */
    readBack,
    confirmReadBack,
    /** @param from what came with a code that was handed over: it fills what is empty */
    resume(note: Note, from: Caller = {}): void {
      for (const field of callerFields)
        if (!caller.caller()[field]) caller.set(field, from[field] ?? '');
      if (note.guide !== guide.id) {
        around.onOther(note);
        return;
      }
      const { latest } = madeOn(note.day, new Date());
      const { details, error } = note;
      batch(() => {
        forget();
        if (!journey.open(note.journey)) setFound(['desk:told.astray']);
        wait.restore(undefined);
        address.set({ details, error, made: latest.toISOString().slice(0, 10) });
        say({ key: 'desk:status.resumed', facts: { count: journey.length() } });
      });
    },
    clearCaller(): void {
      caller.clear();
      say({ key: 'desk:status.cleared' });
    },
    /** Whether the staff is being asked if the call is over. */
    endAsked,
    askEnd: () => setEndAsked(true),
    stay: () => setEndAsked(false),
    end(): void {
      batch(() => {
        forget();
        caller.clear();
        journey.open([]);
        wait.restore(undefined);
        address.set({ details: {} });
        address.begin();
        setFound([]);
        setNumber(number() + 1);
        say({ key: 'desk:status.started' });
      });
      around.onNext();
    },
  };
}
