import { For, Show, type Accessor } from 'solid-js';
import { titleOf } from '../note/sentences.ts';
import { Care } from './Care.tsx';
import { Choices } from './Choices.tsx';
import { ErrorText } from './ErrorText.tsx';
import { StepTimer } from './StepTimer.tsx';
import { carriedOf } from './nodes.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** A question or a step of the guide in words to say aloud, and the caller's answer. */
export function Ask(props: DeskProps & { readonly now: Accessor<number> }) {
  const t = sayer(props);
  const words = () => props.page.words;
  const node = () => props.desk.node();
  const key = () => `${props.desk.guide.id}:${node().sentences}`;
  const carried = () => carriedOf(props.page, node());
  const isStep = () => node().kind === 'step';
  const kicker = () => {
    if (props.desk.view().kind === 'danger')
      return props.desk.edited().journey.length > 0 ? 'say.dangerAgain' : 'say.danger';
    if (props.desk.present() !== undefined) return 'say.change';
    return isStep() ? 'say.step' : 'say.question';
  };
  const left = () => {
    const { least, most } = carried().left;
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
        {titleOf(words(), props.desk.guide, node())}
      </h2>
      <Show when={words().some(`${key()}.help`).length > 0}>
        <p class="quiet lead-in">{t('say.help')}</p>
        <ul class="aloud-more">
          <For each={words().some(`${key()}.help`)}>{(line) => <li>{line}</li>}</For>
        </ul>
      </Show>
      <Care page={props.page} desk={props.desk} node={node()} />
      <Show when={isStep()}>
        <ol class="aloud-more">
          <For each={words().some(`${key()}.lines`)}>{(line) => <li>{line}</li>}</For>
        </ol>
      </Show>
      <StepTimer page={props.page} desk={props.desk} now={props.now} />
      <Show when={carried().takesError}>
        <ErrorText page={props.page} desk={props.desk} />
      </Show>
      <h3 class="kicker">{t(isStep() ? 'say.then' : 'say.answers')}</h3>
      <Choices page={props.page} desk={props.desk} />
      <Show when={words().has(`${key()}.why`)}>
        <p class="why quiet">
          <strong>{t('say.why')}:</strong> {words().t(`${key()}.why`)}
        </p>
      </Show>
    </section>
  );
}
