import { For, type JSX } from 'solid-js';
import type { Plan } from '../../diagnosis/plan.ts';
import { Bar } from './Bar.tsx';
import { minutes } from './facts.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';

interface Props {
  readonly page: Page;
  readonly plan: Plan;
}

const routes = ['best', 'likeliest', 'fixed'] as const;

/** Expected minutes of this order beside what else one might do. */
export function Routes(props: Props): JSX.Element {
  const t = sayer(props);
  const longest = () => Math.max(...routes.map((route) => props.plan[route].expectedMinutes));
  return (
    <div class="card routes">
      <h3>{t('preview:plan.expected')}</h3>
      <dl>
        <For each={routes}>
          {(route) => (
            <div>
              <dt>{t(`preview:plan.routes.${route}`)}</dt>
              <dd>
                <Bar part={props.plan[route].expectedMinutes / longest()} />
                {minutes(props.page.words, props.plan[route].expectedMinutes)}
              </dd>
            </div>
          )}
        </For>
      </dl>
      <p class="quiet">{t('preview:plan.expectedNote')}</p>
    </div>
  );
}
