import { Show } from 'solid-js';
import { clock } from '../../journey/wait.ts';
import { Key, KeyButton } from './Key.tsx';
import { SayIn } from './SayIn.tsx';
import { letters } from './keys.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps, Made } from './state.ts';

/** Over the call: how long it has been, how urgent it is, and the ways out of it. */
export function Bar(props: DeskProps & Made) {
  const t = sayer(props);
  const urgency = () => props.outcome.job()?.urgency ?? 'open';
  return (
    <section class="bar-call" aria-label={t('desk:bar.label')}>
      <dl>
        <div>
          <dt>{t('desk:bar.call')}</dt>
          <dd>
            <span role="timer">{clock(props.clocks.call())}</span>
          </dd>
        </div>
        <div>
          <dt>{t('desk:bar.answered')}</dt>
          <dd>
            <span role="timer">{clock(props.clocks.answered())}</span>
          </dd>
        </div>
        <div class={`urgency ${urgency()}`}>
          <dt>{t('desk:bar.urgency')}</dt>
          <dd>{t(`desk:urgency.${urgency()}`)}</dd>
        </div>
      </dl>
      <SayIn page={props.page} />
      <div class="ways">
        <KeyButton
          class="plain danger"
          of={letters.danger}
          says={t('desk:bar.danger')}
          onClick={() => props.desk.journey.show('danger')}
        />
        <KeyButton
          of={letters.codeIn}
          says={t('desk:codeIn.open')}
          onClick={() => props.desk.journey.show('code')}
        />
        <KeyButton of={letters.undo} says={t('desk:bar.undo')} onClick={() => props.desk.undo()} />
        <KeyButton of={letters.hold} says={t('desk:bar.hold')} onClick={() => props.desk.hold()} />
        <KeyButton
          of={letters.next}
          says={t('desk:bar.next')}
          onClick={() => props.desk.askEnd(props.outcome.copied() !== 'same')}
        />
      </div>
      <Show when={props.desk.sure.asked()}>
        {(sure) => (
          <div class="sure" role="alert">
            <p>{t(sure().ask)}</p>
            <div class="ways">
              <button type="button" onClick={() => props.desk.sure.yes()}>
                <Key of="Enter" /> {t('desk:bar.yes')}
              </button>
              <KeyButton
                of={t('desk:keys.esc')}
                says={t('desk:bar.no')}
                onClick={() => props.desk.sure.no()}
              />
            </div>
          </div>
        )}
      </Show>
    </section>
  );
}
