/** The wait of the step that a call is at. Its end is a time of day, so that it outlives the page. */
import { createSignal, onCleanup } from 'solid-js';
import type { RunningTimer } from '../../address/timer.ts';
import { waitMinutes } from '../../journey/wait.ts';
import { pageTime } from './clocks.ts';
import type { JourneyStore, DeskStatus } from './journey.ts';
import { deskNodeOf } from './nodes.ts';
import type { Page } from './page.ts';
import { withoutUnseen } from './unseen.ts';

/** Milliseconds between two notes of how far a wait has come. */
const NOTED = 15_000;
const seconds = (): number => Math.floor(pageTime() / 1000);

export type WaitStore = ReturnType<typeof createWait>;

export function createWait(
  page: Page,
  { traced, view, length }: Pick<JourneyStore, 'traced' | 'view' | 'length'>,
  say: (told: DeskStatus) => void,
  answered: () => number | undefined,
) {
  const [timer, setTimer] = createSignal<RunningTimer>();
  const whole = (): number | undefined => {
    const { end, heatEnded } = traced();
    const found = deskNodeOf(page, end).timer;
    // The heat stopped that long before the answers were given, and they may be from before a hold.
    const since = Math.max(0, Math.floor((pageTime() - (answered() ?? pageTime())) / 60_000));
    const ended = heatEnded === undefined ? undefined : heatEnded + since;
    return found && waitMinutes(found, ended) * 60;
  };
  const isHere = (one: RunningTimer | undefined) => one?.node === traced().end.id;
  const noted = setInterval(() => setTimer((now) => now && { ...now, counted: seconds() }), NOTED);
  onCleanup(() => clearInterval(noted));
  return {
    timer,
    start(): void {
      const now = view();
      const wait = whole();
      if (wait === undefined || now.kind !== 'at' || now.index < length()) {
        say({ key: 'desk:status.noTimer' });
        return;
      }
      const counted = seconds();
      setTimer({ node: traced().end.id, end: counted + 1 + wait, counted });
    },
    /**
     * Take over what an address says; whether time that no page saw was left out.
     * @param here the call was on hold in this page, whose clock saw all of its time
     */
    restore(given: RunningTimer | undefined, here = false): boolean {
      const wait = here ? undefined : whole();
      const seen =
        given && wait !== undefined && isHere(given)
          ? withoutUnseen(given, wait, seconds())
          : undefined;
      setTimer(seen ?? given);
      return seen !== undefined;
    },
    /** A timer runs on only at its step. */
    stopElsewhere: () => setTimer((now) => (isHere(now) ? now : undefined)),
  };
}
