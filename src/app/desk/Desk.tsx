import { For, Match, Show, Switch, createEffect, on } from 'solid-js';
import { Ahead } from './Ahead.tsx';
import { Ask } from './Ask.tsx';
import { Bar } from './Bar.tsx';
import { CallerCard } from './CallerCard.tsx';
import type { OtherCalls } from './Choose.tsx';
import { CodeIn } from './CodeIn.tsx';
import { CodeOut } from './CodeOut.tsx';
import { DetailsCard } from './DetailsCard.tsx';
import { End } from './End.tsx';
import { JobCard } from './JobCard.tsx';
import { Journey } from './Journey.tsx';
import { Keys, toggleKeys } from './Keys.tsx';
import { Link } from './Link.tsx';
import { Others } from './Others.tsx';
import { sayer } from '../shared/words.ts';
import { focus, listen, type Acts } from './shortcuts.ts';
import type { DeskProps, Made } from './state.ts';

/** What the keys do in a call. */
function actsOf({ desk, outcome }: DeskProps & Made): Acts {
  const { journey } = desk;
  const place = (): number => {
    const view = journey.view();
    return view.kind === 'at' ? view.index : journey.length();
  };
  return {
    answer: (key) => desk.press(key),
    unsure: () => desk.press('0'),
    tick: () => desk.tick(),
    back: () => journey.go(place() - 1),
    forward: () => journey.go(place() + 1),
    leave: () => journey.show('now'),
    danger: () => journey.show('danger'),
    codeIn: () => journey.show('code'),
    timer: () => desk.startTimer(),
    job: () => void outcome.copyJob('text'),
    json: () => void outcome.copyJob('json'),
    clear: () => desk.askClear(),
    next: () => desk.askEnd(outcome.copied() !== 'same'),
    hold: () => desk.hold(),
    undo: () => desk.undo(),
    also() {
      const code = outcome.code();
      if (code) desk.another(code);
      else desk.say({ key: 'desk:status.noJob' });
    },
    keys: toggleKeys,
    calls: focus('desk-calls'),
    ahead: focus('desk-ahead'),
    language: focus('desk-say-in'),
    link: focus('desk-link'),
    codeOut: focus('desk-back'),
    caller: focus('desk-name'),
    // Not its first list: letters that follow would choose in it.
    details: focus('desk-details'),
    error: focus('desk-error'),
  };
}

/** One screen for a call. */
export function Desk(props: DeskProps & Made & { readonly calls: OtherCalls }) {
  const t = sayer(props);
  const said = (): string => {
    const told = props.desk.status();
    return told ? t(told.key, told.facts) : '';
  };
  /** The code is read out at the end: there it comes first. */
  const ended = () => props.desk.journey.node().answers.length === 0;
  // Whoever listens to the page hears what is to be said next.
  const say = focus('desk-say');
  createEffect(on(() => props.desk.journey.spot(), say));
  listen(
    actsOf(props),
    // eslint-disable-next-line solid/reactivity -- called by an event
    () => {
      // From a field Escape goes back to what is to be said; the call stays as it is.
      if (props.desk.journey.view().kind === 'code') props.desk.journey.show('now');
      else say();
    },
    // eslint-disable-next-line solid/reactivity -- a call is made once
    props.desk.sure,
  );
  return (
    <div class="desk" data-seen={props.desk.seen() ? '' : undefined}>
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
          <Match when={ended()}>
            <End {...props} />
          </Match>
        </Switch>
        <JobCard {...props} />
      </div>
      <Journey {...props} />
      <div class="sheet">
        <Show when={ended()}>
          <CodeOut {...props} />
        </Show>
        <CallerCard
          page={props.page}
          caller={props.desk.caller}
          onClear={() => props.desk.askClear()}
        />
        <Ahead {...props} />
        <DetailsCard {...props} />
        <Show when={!ended()}>
          <CodeOut {...props} />
        </Show>
        <Link {...props} />
        <Others {...props} />
      </div>
      <Keys {...props} />
    </div>
  );
}
