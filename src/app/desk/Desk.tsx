import { For, Match, Show, Switch, createEffect, on } from 'solid-js';
import { Ask } from './Ask.tsx';
import { Bar } from './Bar.tsx';
import { CallerCard } from './CallerCard.tsx';
import { CodeIn } from './CodeIn.tsx';
import { CodeOut } from './CodeOut.tsx';
import { DetailsCard } from './DetailsCard.tsx';
import { End } from './End.tsx';
import { JobCard } from './JobCard.tsx';
import { Journey } from './Journey.tsx';
import { Keys } from './Keys.tsx';
import { sayer } from '../shared/words.ts';
import type { DeskProps, Made } from './state.ts';

/** One screen for a call. */
export function Desk(props: DeskProps & Made) {
  const t = sayer(props);
  const said = (): string => {
    const told = props.desk.status();
    return told ? t(told.key, told.facts) : '';
  };
  // Whoever listens to the page hears what is to be said next.
  const focus = () => document.getElementById('desk-say')?.focus();
  createEffect(on(() => props.desk.journey.spot(), focus, { defer: true }));
  return (
    <div class="desk">
      <Bar {...props} />
      <Show when={props.desk.found().length > 0}>
        <div class="told" role="note">
          <For each={props.desk.found()}>{(key) => <p>{t(key)}</p>}</For>
          <button type="button" class="plain" onClick={() => props.desk.understood()}>
            {t('desk:told.close')}
          </button>
        </div>
      </Show>
      <p class="status" id="desk-status" role="status">
        {said()}
      </p>
      <div class="middle">
        <Switch fallback={<Ask {...props} />}>
          <Match when={props.desk.journey.view().kind === 'code'}>
            <CodeIn {...props} />
          </Match>
          <Match when={props.desk.journey.node().answers.length === 0}>
            <End {...props} />
          </Match>
        </Switch>
        <JobCard {...props} />
      </div>
      <Journey {...props} />
      <div class="sheet">
        <CallerCard {...props} />
        <CodeOut {...props} />
        <DetailsCard {...props} />
      </div>
      <Keys {...props} />
    </div>
  );
}
