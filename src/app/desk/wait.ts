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
) {
  const [timer, setTimer] = createSignal<RunningTimer>();
  const whole = (): number | undefined => {
    const { end, heatEnded } = traced();
    const found = deskNodeOf(page, end).timer;
    return found && waitMinutes(found, heatEnded) * 60;
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
    /** Take over what an address says; whether time that no page saw was left out. */
    restore(given: RunningTimer | undefined): boolean {
      const wait = whole();
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
