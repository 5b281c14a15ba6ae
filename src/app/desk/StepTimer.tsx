import { For, Show } from 'solid-js';
import { clock } from '../../journey/wait.ts';
import { KeyButton } from './Key.tsx';
import { letters } from './keys.ts';
import { deskNodeOf } from './nodes.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps, Made } from './state.ts';

/** The count-down of a step. Its end rides in the address; it is worked out from the clock. */
export function StepTimer(props: DeskProps & Pick<Made, 'clocks'>) {
  const t = sayer(props);
  const timer = () => deskNodeOf(props.page, props.desk.journey.node()).timer;
  return (
    <Show when={timer()}>
      {(found) => {
        const cooling = () => found().kind === 'cooling';
        const left = () => {
          const running = props.desk.wait.timer();
          if (running?.node !== props.desk.journey.node().id) return undefined;
          return running.end - props.clocks.now() / 1000;
        };
        const faces = (seconds: number): ['soonest' | 'slowest' | 'left', number][] => {
          const [earliest, latest] = found().minutes;
          return cooling()
            ? [
                ['soonest', seconds - (latest - earliest) * 60],
                ['slowest', seconds],
              ]
            : [['left', seconds]];
        };
        const over = () => (faces(left() ?? 1)[0]?.[1] ?? 1) <= 0;
        return (
          <section class="step-timer">
            <Show when={left() !== undefined}>
              <p class="faces" role="timer">
                <For each={faces(left() ?? 0)}>
                  {([name, seconds]) => (
                    <span>
                      {t(`desk:timer.${name}`)} <strong>{clock(seconds)}</strong>
                    </span>
                  )}
                </For>
              </p>
            </Show>
            <p role="status">
              {over() ? t(cooling() ? 'desk:timer.mayBe' : 'desk:timer.over') : ''}
            </p>
            <KeyButton
              of={letters.timer}
              says={t(left() === undefined ? 'desk:timer.start' : 'desk:timer.again')}
              onClick={() => props.desk.startTimer()}
            />
          </section>
        );
      }}
    </Show>
  );
}
