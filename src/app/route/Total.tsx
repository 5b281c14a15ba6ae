import { Show, type JSX } from 'solid-js';
import type { Assessed } from '../../visit/assess.ts';
import type { Total as TotalOf } from '../../route/total.ts';
import { sayer } from '../shared/words.ts';
import { duration } from './facts.ts';
import type { RouteProps } from './props.ts';

/** The day's time. */
export function Total(
  props: RouteProps & { readonly total: TotalOf; readonly figures: readonly Assessed[] },
): JSX.Element {
  const t = sayer(props);
  const count = () => props.route.visits().length;
  const without = () => count() - props.figures.length;
  return (
    <section class="card total">
      <h2>{t('round:total.title', { count: count() })}</h2>
      <dl>
        <div>
          <dt>{t('round:total.expected')}</dt>
          <dd>{duration(props.page.words, props.total.expected)}</dd>
        </div>
        <div>
          <dt>{t('round:total.cautious')}</dt>
          <dd>{duration(props.page.words, props.total.cautious)}</dd>
        </div>
      </dl>
      <p class="quiet">{t('round:total.note')}</p>
      <Show when={without() > 0}>
        <p class="strong">{t('round:total.without', { count: without() })}</p>
      </Show>
      <Show when={props.route.failed().length > 0}>
        <div role="alert">
          <p>{t('round:total.failed')}</p>
          <button type="button" onClick={() => void props.route.retry()}>
            {t('round:total.retry')}
          </button>
        </div>
      </Show>
    </section>
  );
}
