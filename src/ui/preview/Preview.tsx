import { For, Match, Show, Switch, type JSX } from 'solid-js';
import type { ReadProblem } from '../../note/types.ts';
import { NoteView } from './NoteView.tsx';
import { Reader } from './Reader.tsx';
import { Repaired } from './Repaired.tsx';
import { sayer, type Page } from './page.ts';
import { problemWords } from './sentences.ts';
import type { PreviewState } from './state.ts';

interface Props {
  readonly page: Page;
  readonly state: PreviewState;
}

/** The technician's page: the field, and whatever its code reads as. */
export function Preview(props: Props): JSX.Element {
  const t = sayer(props);
  const reading = () => props.state.reading();
  const exact = () => {
    const now = reading();
    return now?.kind === 'exact' ? now : undefined;
  };
  const repaired = () => {
    const now = reading();
    return props.state.settled() && now?.kind === 'repaired' ? now : undefined;
  };
  const refused = () => {
    const now = reading();
    return props.state.settled() && now?.kind === 'refused' ? now.problem : undefined;
  };
  return (
    <>
      <Reader page={props.page} state={props.state} />
      <For each={props.state.problems()}>
        {(problem) => (
          <p class="card address-problem">{t(`errors:fragment.${problem.code}`, { ...problem })}</p>
        )}
      </For>
      <Switch>
        <Match when={refused()}>
          {(problem) => <Problem page={props.page} problem={problem()} />}
        </Match>
        <Match when={repaired()}>
          {(now) => (
            <Show when={props.state.said() !== 'rejected'}>
              <Repaired
                page={props.page}
                reading={now()}
                onYes={() => props.state.say('confirmed')}
                onNo={() => props.state.say('rejected')}
              />
            </Show>
          )}
        </Match>
        <Match when={exact()}>
          {(now) => <NoteView page={props.page} reading={now()} extras={props.state.extras()} />}
        </Match>
      </Switch>
    </>
  );
}

function Problem(props: { readonly page: Page; readonly problem: ReadProblem }): JSX.Element {
  const t = sayer(props);
  const words = () => problemWords(props.page.words, props.problem);
  return (
    <section class="card problem" id="problem">
      <h2>{t('problem.title')}</h2>
      <p class="strong">{words().what}</p>
      <p>
        <span class="quiet">{t('problem.next')}: </span>
        {words().next}
      </p>
    </section>
  );
}
