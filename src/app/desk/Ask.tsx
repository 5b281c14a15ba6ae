import { For, Show, createMemo } from 'solid-js';
import { nodeWords } from '../shared/content-words.ts';
import { moreText } from '../shared/more.ts';
import { Aloud, AloudLines } from './Aloud.tsx';
import { CautionBox } from './Care.tsx';
import { Choices } from './Choices.tsx';
import { ErrorText } from './ErrorText.tsx';
import { StepTimer } from './StepTimer.tsx';
import { deskNodeOf } from './nodes.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps, Made } from './state.ts';

/** A question or a step of the guide in words to say aloud, and the caller's answer. */
export function Ask(props: DeskProps & Pick<Made, 'clocks'>) {
  const t = sayer(props);
  const node = () => props.desk.journey.node();
  const say = createMemo(() => nodeWords(props.page.words, props.desk.guide, node()));
  const carried = () => deskNodeOf(props.page, node());
  const isStep = () => node().kind === 'step';
  const kicker = () => {
    if (props.desk.journey.view().kind === 'danger')
      return props.desk.journey.length() > 0 ? 'desk:say.dangerAgain' : 'desk:say.danger';
    if (props.desk.journey.present() !== undefined) return 'desk:say.change';
    return isStep() ? 'desk:say.step' : 'desk:say.question';
  };
  return (
    <section class="ask" classList={{ danger: props.desk.journey.view().kind === 'danger' }}>
      <p class="kicker">
        <strong>{t(kicker())}</strong> <span class="quiet">{moreText(t, carried().more)}</span>
      </p>
      <h2 class="aloud" id="desk-say" tabindex="-1">
        <Aloud {...props} part="title" />
      </h2>
      <Show when={say().help.length > 0}>
        <h3 class="kicker">{t('desk:say.help')}</h3>
        <Show
          when={props.desk.journey.conditions().length > 0}
          fallback={
            <ul class="aloud-more">
              <AloudLines {...props} of="help" />
            </ul>
          }
        >
          <ul class="conditions">
            <For each={props.desk.journey.conditions()}>
              {(_, index) => (
                <li>
                  <label>
                    <input
                      type="checkbox"
                      checked={props.desk.journey.isTrue(index())}
                      onChange={() => props.desk.journey.mark(index())}
                    />
                    <span>
                      <Aloud {...props} part={['help', index()]} />
                    </span>
                  </label>
                </li>
              )}
            </For>
          </ul>
        </Show>
      </Show>
      <CautionBox {...props} />
      <Show when={isStep()}>
        <ol class="aloud-more">
          <AloudLines {...props} of="lines" />
        </ol>
      </Show>
      <StepTimer {...props} />
      <Show when={carried().takesError}>
        <ErrorText {...props} />
      </Show>
      <h3 class="kicker then">{t(isStep() ? 'desk:say.then' : 'desk:say.answers')}</h3>
      <Choices {...props} />
      <Show when={say().why}>
        <p class="why quiet">
          <strong>{t('desk:say.why')}:</strong> {say().why}
        </p>
      </Show>
    </section>
  );
}
