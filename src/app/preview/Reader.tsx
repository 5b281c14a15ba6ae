import { Show, createEffect, createSignal, on, type JSX } from 'solid-js';
import { FileButton } from '../shared/FileButton.tsx';
import { Camera } from './Camera.tsx';
import { handOvers, joined } from '../../visit/hand-over.ts';
import { jobLabels } from '../shared/job-text.ts';
import { makeDecode } from './decode.ts';
import type { Key } from '../shared/keys.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';
import { problemWords } from './sentences.ts';
import type { PreviewState } from './state.ts';

interface Props {
  readonly page: Page;
  readonly state: PreviewState;
}

/** The code field and the other ways to fill it: camera, picture. What was read stays as a plate. */
export function Reader(props: Props): JSX.Element {
  const t = sayer(props);
  const [camera, setCamera] = createSignal(false);
  const [trouble, setTrouble] = createSignal<Key>();
  let field: HTMLTextAreaElement | undefined;
  let scan: HTMLButtonElement | undefined;

  const said = () => {
    const key = trouble();
    return key && t(key);
  };
  const status = () => statusOf(props);
  const read = () => {
    const now = props.state.reading();
    return now?.kind === 'exact' ? now.code : undefined;
  };
  /** For another code; the one on the page stays until that is read. */
  const [wanted, setWanted] = createSignal(false);
  createEffect(on(read, () => setWanted(false), { defer: true }));
  const folded = () => read() !== undefined && !wanted();
  const invalid = () => props.state.settled() && props.state.reading()?.kind === 'refused';

  const take = (text: string): void => {
    closeCamera();
    // An address without a code is another site's.
    const foreign = text.includes(':') && handOvers(text, jobLabels(props.page.words)).length === 0;
    setTrouble(foreign ? 'preview:scan.foreign' : undefined);
    if (foreign) return;
    // Another note's model number has no place beside it.
    props.state.type('');
    props.state.type(text);
    props.state.settle();
  };
  const closeCamera = () => {
    if (!camera()) return;
    setCamera(false);
    scan?.focus();
  };
  /** The text of a picture's code, or why there is none. */
  const look = async (file: File): Promise<{ text: string } | { trouble: Key }> => {
    const image = await createImageBitmap(file).catch(() => undefined);
    if (!image) return { trouble: 'preview:scan.notPicture' };
    const decode = await makeDecode().catch(() => undefined);
    const text = await decode?.(image).catch(() => undefined);
    image.close();
    if (!decode) return { trouble: 'preview:scan.library' };
    return text === undefined ? { trouble: 'preview:scan.nothing' } : { text };
  };
  const picture = async (file: File): Promise<void> => {
    setTrouble('preview:scan.looking');
    const seen = await look(file);
    if ('text' in seen) take(seen.text);
    else setTrouble(seen.trouble);
  };

  return (
    <form
      class="reader"
      onSubmit={(event) => {
        event.preventDefault();
        props.state.settle();
        if (props.state.code().trim() === '') field?.focus();
        else if (read() !== undefined) setWanted(false);
      }}
    >
      <Show when={read()}>
        {(code) => (
          <p class="plate">
            <strong class="groups">{joined([code(), ...props.state.extras().also])}</strong>
            <button
              type="button"
              class="plain"
              aria-expanded={!folded()}
              onClick={() => {
                setWanted(folded());
                field?.select();
              }}
            >
              {t('preview:field.another')}
            </button>
          </p>
        )}
      </Show>
      <div class="card" hidden={folded()}>
        <label for="code">{t('preview:field.label')}</label>
        <p class="quiet" id="code-hint">
          {t('preview:field.hint')}
        </p>
        <textarea
          id="code"
          ref={(element) => (field = element)}
          rows="2"
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          aria-describedby={invalid() ? 'code-status problem code-hint' : 'code-hint'}
          aria-invalid={invalid() ? 'true' : undefined}
          value={props.state.code()}
          onInput={(event) => {
            setTrouble();
            props.state.type(event.currentTarget.value);
            // A pasted code is whole; a typed one is under way.
            if (event.inputType === 'insertFromPaste') props.state.settle();
          }}
          onChange={() => props.state.settle()}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || event.isComposing) return;
            event.preventDefault();
            event.currentTarget.form?.requestSubmit();
          }}
        />
        <div class="ways">
          <button type="submit">{t('preview:field.read')}</button>
          <button
            type="button"
            class="plain"
            ref={(element) => (scan = element)}
            aria-expanded={camera()}
            onClick={() => {
              setTrouble();
              setCamera(!camera());
            }}
          >
            {t(camera() ? 'preview:scan.stop' : 'preview:scan.camera')}
          </button>
          <FileButton label={t('preview:scan.picture')} accept="image/*" onFile={picture} />
          <Show when={props.state.code() !== ''}>
            <button
              type="button"
              class="plain"
              onClick={() => {
                props.state.type('');
                field?.focus();
              }}
            >
              {t('preview:field.clear')}
            </button>
          </Show>
        </div>
        <p class="trouble" role="alert">
          {said()}
        </p>
        <Show when={camera()}>
          <Camera
            page={props.page}
            onText={take}
            onTrouble={(key) => {
              setCamera(false);
              setTrouble(key);
            }}
          />
        </Show>
      </div>
      <p
        class="reading"
        id="code-status"
        role="status"
        classList={{ bad: invalid(), unseen: folded() }}
      >
        {status()}
      </p>
    </form>
  );
}

function statusOf({ page, state }: Props): string {
  const t = sayer({ page });
  const now = state.reading();
  if (!now)
    return t(state.settled() ? 'preview:status.empty' : 'preview:status.typing', { count: 0 });
  if (now.kind === 'exact')
    return state.said() === 'confirmed'
      ? t('preview:status.confirmed')
      : t('preview:status.exact', { count: now.note.journey.length });
  if (!state.settled())
    return t('preview:status.typing', { count: state.code().replace(/[\s-]/g, '').length });
  if (state.said() === 'rejected') return t('preview:status.rejected');
  return now.kind === 'repaired'
    ? t('preview:status.repaired', { count: now.places.length })
    : problemWords(page.words, now.problem).what;
}
