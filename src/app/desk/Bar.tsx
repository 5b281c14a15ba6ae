import { Show } from 'solid-js';
import { clock } from '../../journey/wait.ts';
import { Key } from './Key.tsx';
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
        <button type="button" class="danger" onClick={() => props.desk.journey.show('danger')}>
          <Key of={letters.danger} /> {t('desk:bar.danger')}
        </button>
        <button type="button" class="plain" onClick={() => props.desk.journey.show('code')}>
          <Key of={letters.codeIn} /> {t('desk:codeIn.open')}
        </button>
        <button type="button" class="plain" onClick={() => props.desk.undo()}>
          <Key of={letters.undo} /> {t('desk:bar.undo')}
        </button>
        <button type="button" class="plain" onClick={() => props.desk.hold()}>
          <Key of={letters.hold} /> {t('desk:bar.hold')}
        </button>
        <button
          type="button"
          class="plain"
          onClick={() => props.desk.askEnd(props.outcome.copied() !== 'same')}
        >
          <Key of={letters.next} /> {t('desk:bar.next')}
        </button>
      </div>
      <Show when={props.desk.sure.asked()}>
        {(sure) => (
          <div class="sure" role="alert">
            <p>{t(sure().ask)}</p>
            <div class="ways">
              <button type="button" onClick={() => props.desk.sure.yes()}>
                <Key of="Enter" /> {t('desk:bar.yes')}
              </button>
              <button type="button" class="plain" onClick={() => props.desk.sure.no()}>
                <Key of={t('desk:keys.esc')} /> {t('desk:bar.no')}
              </button>
            </div>
          </div>
        )}
      </Show>
    </section>
  );
}
