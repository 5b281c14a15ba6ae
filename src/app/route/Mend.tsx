import { For, Show, createSignal, type JSX } from 'solid-js';
import { sayer } from '../shared/words.ts';
import { Repaired } from '../preview/Repaired.tsx';
import { problemWords } from '../preview/sentences.ts';
import type { RouteProps } from './props.ts';
import type { Line } from './state.ts';

/** The lines that are no visits yet, each with its reason and a field to mend it in. */
export function Mend(props: RouteProps): JSX.Element {
  const t = sayer(props);
  let title: HTMLElement | undefined;
  // By name: a mended line is a new one, and its field must keep the focus.
  const ids = () => props.route.unread().map(({ id }) => id);
  const count = () => ids().length;
  /** The field that was used is gone: on to the next one, or to the list that is whole now. */
  const goOn = (): void => {
    if (count() > 0) title?.focus();
    else document.getElementById('visits-title')?.focus();
  };
  return (
    <Show when={count() > 0}>
      <section class="card mend">
        <h2 tabindex="-1" ref={(element) => (title = element)}>
          {t('round:mend.title', { count: count() })}
        </h2>
        <p>{t('round:mend.lead')}</p>
        <ol>
          <For each={ids()}>
            {(id) => (
              <Show when={props.route.unread().find((line) => line.id === id)}>
                {(line) => <Mending {...props} line={line()} goOn={goOn} />}
              </Show>
            )}
          </For>
        </ol>
      </section>
    </Show>
  );
}

function Mending(
  props: RouteProps & { readonly line: Line; readonly goOn: () => void },
): JSX.Element {
  const t = sayer(props);
  const [rejected, setRejected] = createSignal(false);
  // eslint-disable-next-line solid/reactivity -- a line keeps its name
  const key = `mend-${String(props.line.id)}`;
  let field: HTMLInputElement | undefined;
  const problem = () => {
    const { reading } = props.line;
    return reading.kind === 'refused' ? problemWords(props.page.words, reading.problem) : undefined;
  };
  const proposal = () => {
    const { reading } = props.line;
    return reading.kind === 'repaired' && !rejected() ? reading : undefined;
  };
  const added = (): void => {
    props.say(t('round:said.added', { count: 1 }));
    props.goOn();
  };
  const read = async (): Promise<void> => {
    setRejected(false);
    if (await props.route.mend(props.line.id, field?.value ?? '')) added();
    else field?.focus();
  };
  return (
    <li>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void read();
        }}
      >
        <label for={key}>{t('round:mend.label', { row: props.line.row })}</label>
        <input
          id={key}
          class="typed"
          ref={(element) => (field = element)}
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          aria-describedby={`${key}-why`}
          aria-invalid={problem() ? 'true' : undefined}
          value={props.line.text}
        />
        <p class="trouble" id={`${key}-why`}>
          <Show when={problem()} fallback={rejected() ? t('round:mend.rejected') : ''}>
            {(words) => (
              <>
                {words().what} {words().next}
              </>
            )}
          </Show>
        </p>
        <Show when={props.line.others.some((cell) => cell !== '')}>
          <p class="quiet">
            <bdi>{props.line.others.filter((cell) => cell !== '').join(' · ')}</bdi>
          </p>
        </Show>
        <div class="ways">
          <button type="submit">{t('round:mend.read')}</button>
          <button
            type="button"
            class="plain"
            aria-label={t('round:mend.outOf', { row: props.line.row })}
            onClick={() => {
              props.say(t('round:said.lineOut', { row: props.line.row }));
              props.route.drop(props.line.id);
              props.goOn();
            }}
          >
            {t('round:mend.out')}
          </button>
        </div>
      </form>
      <Show when={proposal()}>
        {(reading) => (
          <Repaired
            page={props.page}
            reading={reading()}
            onYes={() => void props.route.confirm(props.line.id).then(added)}
            onNo={() => {
              setRejected(true);
              field?.focus();
            }}
          />
        )}
      </Show>
    </li>
  );
}
