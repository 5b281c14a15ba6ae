import { For, Match, Show, Switch, createEffect, on, type JSX } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { hashOf } from '../../address/grammar.ts';
import type { ReadProblem } from '../../note/types.ts';
import { Fetching } from '../shared/Fetching.tsx';
import { createLatePart } from '../shared/late-part.ts';
import { Reader } from './Reader.tsx';
import { Repaired } from './Repaired.tsx';
import { LazyDetails } from '../visits/LazyDetails.tsx';
import { demoName } from '../shared/staff-words.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';
import { problemWords } from './sentences.ts';
import type { PreviewState } from './state.ts';

interface Props {
  readonly page: Page;
  readonly state: PreviewState;
}

/** The technician's page: the field, and whatever its code reads as. */
export function Preview(props: Props): JSX.Element {
  const t = sayer(props);
  let result: HTMLElement | undefined;
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
  // With the first code, as the codebooks: what reads it is half of what a page without one weighs.
  const noteView = createLatePart(
    () => props.state.code() !== '',
    async () => (await import('./NoteView.tsx')).NoteView,
  );
  createEffect(
    on(
      () => exact()?.code,
      (code) => {
        // The field folds away; whoever typed in it goes on at what it says.
        if (code === undefined) return;
        result?.focus({ preventScroll: true });
        scrollTo({ top: 0 });
      },
      { defer: true },
    ),
  );
  return (
    <>
      <Reader page={props.page} state={props.state} />
      <For each={props.state.problems()}>
        {(problem) => <p class="card address-problem">{t(`errors:fragment.${problem.code}`)}</p>}
      </For>
      <div class="result" id="result" tabindex="-1" ref={(element) => (result = element)}>
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
                  onNo={() => {
                    props.state.say('rejected');
                    document.getElementById('code')?.focus();
                  }}
                />
              </Show>
            )}
          </Match>
          <Match when={exact()}>
            {(now) => (
              <Show
                when={noteView.value()}
                fallback={<Fetching words={props.page.words} fetched={noteView} />}
              >
                {(part) => (
                  <Dynamic
                    component={part()}
                    page={props.page}
                    reading={now()}
                    extras={props.state.extras()}
                  />
                )}
              </Show>
            )}
          </Match>
        </Switch>
      </div>
      <LazyDetails
        class="visits-fold"
        title={t('visits:title')}
        failed={t('visits:failed')}
        content={() =>
          import('../visits/Visits.tsx').then(({ Visits }) => () => <Visits page={props.page} />)
        }
      />
      <Show when={!exact()}>
        <Demos {...props} />
      </Show>
    </>
  );
}

/** Made-up visits to try; links, so that they can be opened beside and shared. */
function Demos(props: Props): JSX.Element {
  const t = sayer(props);
  return (
    <section class="demos">
      <h2>{t('preview:demo.title')}</h2>
      <p class="quiet">{t('preview:demo.lead')}</p>
      <ul>
        <For each={props.page.demos}>
          {({ id, code }) => (
            <li>
              <a
                href={hashOf({ c: code })}
                onClick={(event) => {
                  if (event.ctrlKey || event.metaKey || event.shiftKey) return;
                  event.preventDefault();
                  props.state.openAddress(hashOf({ c: code }));
                }}
              >
                <span>{demoName(props.page.words, id)}</span> <code>{code}</code>
              </a>
            </li>
          )}
        </For>
      </ul>
    </section>
  );
}

function Problem(props: { readonly page: Page; readonly problem: ReadProblem }): JSX.Element {
  const t = sayer(props);
  const words = () => problemWords(props.page.words, props.problem);
  return (
    <section class="card problem" id="problem">
      <h2>{t('preview:problem.next')}</h2>
      <p>{words().next}</p>
      <Show when={props.problem.code === 'unknown-release'}>
        {/* `offline/announce.ts` acts on it; the address holds the code. */}
        <button type="button" data-newest>
          {t('offline:update.newest')}
        </button>
      </Show>
    </section>
  );
}
