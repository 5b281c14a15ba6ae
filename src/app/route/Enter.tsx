import { createSignal, type JSX } from 'solid-js';
import { textOf } from '../../decode.ts';
import type { EntriesProblem } from '../../route/entries.ts';
import { MOST_VISITS, isTooLarge } from '../../route/limits.ts';
import { FileButton } from '../shared/FileButton.tsx';
import { sayer } from '../shared/words.ts';
import type { RouteProps } from './props.ts';
import type { Added } from './state.ts';

/**
 * Codes pasted, typed, dropped or taken from a file. What was typed and is refused stays in the
 * field; a file stays a file: the field would take minutes to lay out a long one.
 */
export function Enter(
  props: RouteProps & {
    /** All is on the route: the list is looked at next. */
    readonly onAdded: () => void;
  },
): JSX.Element {
  const t = sayer(props);
  const [text, setText] = createSignal('');
  const [problem, setProblem] = createSignal('');
  const [over, setOver] = createSignal(false);
  let field: HTMLTextAreaElement | undefined;

  const why = (found: EntriesProblem | { readonly code: 'unloaded' }): string =>
    t(`round:problem.${found.code}`, {
      ...found,
      ...('given' in found ? { count: found.given } : {}),
    });
  const done = ({ visits, unread, column }: Added): string =>
    [
      t('round:said.added', { count: visits }),
      ...(unread > 0 ? [t('round:said.mend', { count: unread })] : []),
      ...(column === undefined ? [] : [t('round:said.column', { column })]),
    ].join(' ');
  const add = async (given: string): Promise<void> => {
    if (props.route.busy()) return;
    setProblem('');
    const added = await props.route.add(given);
    if (added.ok) {
      // What was typed meanwhile is the next to be added.
      if (text() === given) setText('');
      props.say(done(added.value));
      if (text() === '') props.onAdded();
      return;
    }
    setProblem(why(added.error));
    field?.focus();
  };
  const take = async (file: File): Promise<void> => {
    const bytes = isTooLarge(file.size)
      ? undefined
      : await file.arrayBuffer().catch(() => undefined);
    if (!bytes) {
      setProblem(t(isTooLarge(file.size) ? 'round:problem.too-large' : 'round:problem.file'));
      return;
    }
    const given = textOf(new Uint8Array(bytes));
    if (given.ok) await add(given.value);
    else setProblem(t('round:problem.encoding'));
  };

  return (
    <form
      class="card enter"
      classList={{ over: over() }}
      onSubmit={(event) => {
        event.preventDefault();
        void add(text());
      }}
      onDragOver={(event) => {
        if (event.dataTransfer?.types.includes('Files') !== true) return;
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        const file = event.dataTransfer?.files[0];
        setOver(false);
        if (!file) return;
        event.preventDefault();
        void take(file);
      }}
    >
      <label for="codes">{t('round:enter.label')}</label>
      <p class="quiet" id="codes-hint">
        {over() ? t('round:enter.over') : t('round:enter.hint', { most: MOST_VISITS })}
      </p>
      <textarea
        id="codes"
        class="typed"
        rows="4"
        autocomplete="off"
        autocapitalize="characters"
        spellcheck={false}
        ref={(element) => (field = element)}
        aria-describedby="codes-problem codes-hint"
        aria-invalid={problem() === '' ? undefined : 'true'}
        value={text()}
        onInput={({ currentTarget }) => {
          setText(currentTarget.value);
          setProblem('');
        }}
      />
      <p class="trouble" id="codes-problem" role="alert">
        {problem()}
      </p>
      <div class="ways">
        <button type="submit" disabled={props.route.busy() !== undefined}>
          {t('round:enter.add')}
        </button>
        <FileButton
          label={t('round:enter.file')}
          accept=".csv,.txt,.json,text/csv,text/plain,application/json"
          onFile={take}
        />
      </div>
      <p class="quiet">{t(props.page.keepCaller === 'tab' ? 'round:kept' : 'round:keptCodes')}</p>
    </form>
  );
}
