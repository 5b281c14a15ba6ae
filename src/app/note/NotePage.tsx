import { For, Match, Show, Switch, createEffect, createMemo } from 'solid-js';
import { codebookGuide } from '../../note/codebook.ts';
import type { Codebook, Codebooks } from '../../note/codebook.ts';
import type { Words } from '../shared/words.ts';
import { Answers } from './Answers.tsx';
import { Code } from './Code.tsx';
import { Details } from './Details.tsx';
import { Lost } from './Lost.tsx';
import { More } from './More.tsx';
import { Outcome } from './Outcome.tsx';
import { codeOf, localDay } from './code.ts';
import type { NotePart } from './part.ts';
import { trace } from '../../journey/trace.ts';
import type { NoteState } from './state.ts';
import type { Traced } from './traced.ts';

export function NotePage(props: {
  codebooks: Codebooks;
  codebook: Codebook;
  part: NotePart;
  words: Words;
  state: NoteState;
}) {
  const fragment = () => props.state.fragment();
  /** Undefined for a journey without an answer, and where one does not fit. */
  const traced = createMemo(() => {
    const guide = codebookGuide(props.codebook, props.part.guide);
    const found = guide && trace(guide, fragment().journey);
    return found && found.steps.length > 0 && found.rest.length === 0
      ? { ...found, guide }
      : undefined;
  });
  createEffect(() => {
    // The day is set once, when the note is first shown, and rides along from there.
    if (traced() && fragment().made === undefined)
      props.state.change({ made: localDay(new Date()) });
  });
  const coded = createMemo(() => {
    const found = traced();
    return found && props.part.frozen
      ? codeOf(props.codebooks, props.codebook, found.guide.id, fragment())
      : undefined;
  });
  /** The code first: in an emergency there is no time for questions. */
  const first = () => traced()?.end.urgency === 'emergency';
  const details = (found: Traced) => ({
    words: props.words,
    codebook: props.codebook,
    state: props.state,
    traced: found,
    ask: props.part.ask,
    leftOut: coded()?.leftOut,
  });
  const problems = () => [...new Set(props.state.problems().map(({ code }) => code))];
  return (
    <>
      <Show when={problems().length > 0}>
        <div class="told" role="note">
          <For each={problems()}>{(code) => <p>{props.words.t(`errors:fragment.${code}`)}</p>}</For>
        </div>
      </Show>
      <Switch>
        <Match when={traced()}>
          {(found) => (
            <>
              <Outcome
                words={props.words}
                traced={found()}
                calls={props.part.calls}
                fragment={fragment()}
              />
              <Show when={!first()}>
                <Details {...details(found())} />
              </Show>
              <Show when={coded()} fallback={<p class="told">{props.words.t('note:noCode')}</p>}>
                {(code) => (
                  <Code words={props.words} traced={found()} coded={code()} fragment={fragment()} />
                )}
              </Show>
              <Show when={first()}>
                <Details {...details(found())} />
              </Show>
              <More words={props.words} state={props.state} />
              <Answers words={props.words} traced={found()} fragment={fragment()} />
            </>
          )}
        </Match>
        <Match when={true}>
          <Lost
            words={props.words}
            codebook={props.codebook}
            guide={props.part.guide}
            fragment={fragment()}
          />
        </Match>
      </Switch>
    </>
  );
}
