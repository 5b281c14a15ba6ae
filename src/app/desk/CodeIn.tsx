import { Show, createMemo, createSignal, onMount } from 'solid-js';
import { readPasted } from '../../visit/hand-over.ts';
import { Repaired } from '../preview/Repaired.tsx';
import { problemWords } from '../preview/sentences.ts';
import { jobLabels } from '../shared/job-text.ts';
import { Key, KeyButton } from './Key.tsx';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** A code the caller already has, also of half a journey: read it and go on from there. */
export function CodeIn(props: DeskProps) {
  const t = sayer(props);
  let field: HTMLTextAreaElement | undefined;
  const [code, setCode] = createSignal('');
  const [settled, setSettled] = createSignal(false);
  const books = () =>
    props.page.addBooks().then(
      () => true,
      () => false,
    );
  /** Whether every release is here. */
  const [ready, setReady] = createSignal(false);
  const pasted = createMemo(() =>
    settled() && ready()
      ? readPasted(code().trim(), props.page.codebooks, jobLabels(props.page.words))
      : undefined,
  );
  const reading = () => pasted()?.reading;
  const problem = () => {
    const now = reading();
    return now?.kind === 'refused' ? problemWords(props.page.words, now.problem) : undefined;
  };
  const repaired = () => {
    const now = reading();
    return now?.kind === 'repaired' ? now : undefined;
  };
  const go = () => {
    const now = reading();
    if (!now || now.kind === 'refused') return;
    // What was made whole has been confirmed by whoever read it.
    props.desk.resume(now.note, pasted()?.came, now.kind === 'repaired' ? now.code : undefined);
  };
  const read = async () => {
    setSettled(true);
    setReady(await books());
    if (!ready()) props.desk.say({ key: 'fetching:unreachable' });
    // Or typed on meanwhile, or gone back to the call.
    if (!ready() || !settled() || props.desk.journey.view().kind !== 'code') return;
    const now = reading();
    const came = pasted()?.came;
    if (came?.code === '') props.desk.takeOver(came.caller);
    else if (now?.kind === 'exact') go();
    else if (now?.kind === 'repaired')
      document.querySelector<HTMLElement>('.repair button')?.focus();
    else field?.focus();
  };
  onMount(() => {
    // While the code is typed.
    void books();
    // A link from elsewhere may bring a code along; it is read like a typed one.
    const view = props.desk.journey.view();
    if (view.kind === 'code' && view.given !== undefined) {
      setCode(view.given);
      void read();
    }
    field?.focus();
  });
  return (
    <section class="ask code-in">
      <h2 id="desk-say" tabindex="-1">
        {t('desk:codeIn.open')}
      </h2>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void read();
        }}
      >
        <label for="desk-code">{t('desk:codeIn.label')}</label>
        <p class="quiet" id="desk-code-hint">
          {t('desk:codeIn.hint')}
        </p>
        <textarea
          id="desk-code"
          class="typed"
          ref={(element) => (field = element)}
          rows="2"
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          aria-describedby="desk-code-hint desk-code-problem"
          aria-invalid={problem() ? 'true' : undefined}
          value={code()}
          onInput={({ currentTarget }) => {
            setSettled(false);
            setCode(currentTarget.value);
          }}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || event.isComposing) return;
            event.preventDefault();
            event.currentTarget.form?.requestSubmit();
          }}
        />
        <p id="desk-code-problem" role="status">
          <Show when={problem()}>
            {(told) => (
              <>
                {told().what} <strong>{t('desk:codeIn.next')}:</strong> {told().next}
              </>
            )}
          </Show>
        </p>
        <Show when={props.desk.journey.length() > 0}>
          <p class="quiet">{t('desk:codeIn.replace')}</p>
        </Show>
        <div class="ways">
          <button type="submit">
            <Key of="Enter" /> {t('desk:codeIn.read')}
          </button>
          <KeyButton
            of={t('desk:keys.esc')}
            says={t('desk:codeIn.close')}
            onClick={() => props.desk.journey.show('now')}
          />
        </div>
      </form>
      <Show when={repaired()}>
        {(now) => (
          <Repaired
            page={props.page}
            reading={now()}
            onYes={go}
            onNo={() => {
              setSettled(false);
              field?.focus();
            }}
          />
        )}
      </Show>
    </section>
  );
}
