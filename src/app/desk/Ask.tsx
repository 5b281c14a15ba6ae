import { For, Show, createMemo, type Accessor } from 'solid-js';
import { nodeWords } from '../shared/content-words.ts';
import { CautionBox } from './Care.tsx';
import { Choices } from './Choices.tsx';
import { ErrorText } from './ErrorText.tsx';
import { StepTimer } from './StepTimer.tsx';
import { deskNodeOf } from './nodes.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** A question or a step of the guide in words to say aloud, and the caller's answer. */
export function Ask(props: DeskProps & { readonly now: Accessor<number> }) {
  const t = sayer(props);
  const node = () => props.desk.node();
  const say = createMemo(() => nodeWords(props.page.words, props.desk.guide, node()));
  const deskNode = () => deskNodeOf(props.page, node());
  const isStep = () => node().kind === 'step';
  const kicker = () => {
    if (props.desk.view().kind === 'danger')
      return props.desk.edited().journey.length > 0 ? 'desk:say.dangerAgain' : 'desk:say.danger';
    if (props.desk.present() !== undefined) return 'desk:say.change';
    return isStep() ? 'desk:say.step' : 'desk:say.question';
  };
  const left = () => {
    const { least, most } = deskNode().left;
    return least === most
      ? t('site:page.left', { count: most })
      : t('site:page.leftRange', { least, most });
  };
  return (
    <section class="ask" classList={{ danger: props.desk.view().kind === 'danger' }}>
      <p class="kicker">
        <strong>{t(kicker())}</strong> <span class="quiet">{left()}</span>
      </p>
      <h2 class="aloud" id="desk-say" tabindex="-1">
        {say().title}
      </h2>
      <Show when={say().help.length > 0}>
        <p class="quiet lead-in">{t('desk:say.help')}</p>
        <ul class="aloud-more">
          <For each={say().help}>{(line) => <li>{line}</li>}</For>
        </ul>
      </Show>
      <CautionBox page={props.page} desk={props.desk} node={node()} />
      <Show when={isStep()}>
        <ol class="aloud-more">
          <For each={say().lines}>{(line) => <li>{line}</li>}</For>
        </ol>
      </Show>
      <StepTimer page={props.page} desk={props.desk} now={props.now} />
      <Show when={deskNode().takesError}>
        <ErrorText page={props.page} desk={props.desk} />
      </Show>
      <h3 class="kicker">{t(isStep() ? 'desk:say.then' : 'desk:say.answers')}</h3>
      <Choices page={props.page} desk={props.desk} />
      <Show when={say().why}>
        <p class="why quiet">
          <strong>{t('desk:say.why')}:</strong> {say().why}
        </p>
      </Show>
    </section>
  );
}
