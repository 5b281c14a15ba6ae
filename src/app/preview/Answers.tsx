import { For, Show, type JSX } from 'solid-js';
import { guideName, nodeWords, stepWords } from '../shared/content-words.ts';
import { marked } from '../shared/marked.tsx';
import { sayer } from '../shared/words.ts';
import type { Step, VisitView } from '../../visit/read-visit.ts';
import { Pairs } from './Pairs.tsx';
import type { Page } from './page.ts';
import { named } from './told.ts';

export interface ViewProps {
  readonly page: Page;
  readonly view: VisitView;
  /** Its complaint, where the visit has several. */
  readonly of: string | undefined;
}

/** What the homeowner saw and did, as a technician looks for it, and what was not asked. */
export function Answers(props: ViewProps): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  // eslint-disable-next-line solid/reactivity -- another note is another part
  const { legs, tried, notAsked, guide, last, steps, state, end } = props.view;
  const pair = (step: Step) => {
    const [asked, answer] = stepWords(words(), guide, step);
    return [marked(words(), asked), marked(words(), answer)] as const;
  };
  return (
    <details class="card answers">
      <summary>
        <h2>{named(props.of, t('preview:answers.title', { count: steps.length }))}</h2>
        {/* The same in one glance: for the eye alone, what is unfolded says it all. */}
        <span class="line" aria-hidden="true">
          <For each={steps}>
            {(step) => (
              <span classList={{ tried: step.node.kind === 'step' }}>
                <span>{pair(step)[1]}</span>
              </span>
            )}
          </For>
          <span class={`end ${state}`}>
            <span>{nodeWords(words(), guide, end).short}</span>
          </span>
        </span>
      </summary>
      <Show when={last !== guide.id}>
        <p class="crossed">
          {t('preview:ranking.crossed', {
            first: guideName(words(), guide.id),
            last: guideName(words(), last),
          })}
        </p>
      </Show>
      <For each={legs}>
        {(leg) => (
          <For each={leg.groups}>
            {([group, list], index) => (
              <>
                <h3>
                  <Show when={legs.length > 1 && index() === 0}>
                    {guideName(words(), leg.guide)}:{' '}
                  </Show>
                  {t(`preview:groups.${group}`)}
                </h3>
                <Pairs rows={list.map(pair)} />
              </>
            )}
          </For>
        )}
      </For>
      <h3>{t('preview:tried.title')}</h3>
      <Show when={tried.length > 0} fallback={<p class="quiet">{t('preview:tried.none')}</p>}>
        <Pairs rows={tried.map(pair)} />
      </Show>
      <h3>{t('preview:notAsked', { count: notAsked.length })}</h3>
      <p class="quiet">
        {notAsked.map((node) => nodeWords(words(), guide, node).short).join('; ')}
      </p>
    </details>
  );
}
