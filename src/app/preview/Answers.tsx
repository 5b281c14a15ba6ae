import { For, Show, type JSX } from 'solid-js';
import { answerWords, guideName, nodeWords } from '../shared/content-words.ts';
import { sayer } from '../shared/words.ts';
import type { Step } from '../../visit/read-visit.ts';
import type { VisitProps } from './told.ts';

type Props = Pick<VisitProps, 'page' | 'view'>;

/** What the homeowner saw and did, as a technician looks for it, and what was not asked. */
export function Answers(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  // eslint-disable-next-line solid/reactivity -- another note is another part
  const { legs, tried, notAsked, guide, last, steps } = props.view;
  return (
    <details class="card answers">
      <summary>
        <h2>{t('preview:answers.title', { count: steps.length })}</h2>
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
                <Lines {...props} steps={list} />
              </>
            )}
          </For>
        )}
      </For>
      <h3>{t('preview:tried.title')}</h3>
      <Show when={tried.length > 0} fallback={<p class="quiet">{t('preview:tried.none')}</p>}>
        <Lines {...props} steps={tried} />
      </Show>
      <h3>{t('preview:notAsked', { count: notAsked.length })}</h3>
      <p class="quiet">
        {notAsked.map((node) => nodeWords(words(), guide, node).short).join('; ')}
      </p>
    </details>
  );
}

function Lines(props: Props & { readonly steps: readonly Step[] }): JSX.Element {
  return (
    <dl>
      <For each={props.steps}>
        {({ node, edge }) => (
          <div>
            <dt>{nodeWords(props.page.words, props.view.guide, node).short}</dt>
            <dd>{answerWords(props.page.words, props.view.guide, node, edge.id)}</dd>
          </div>
        )}
      </For>
    </dl>
  );
}
