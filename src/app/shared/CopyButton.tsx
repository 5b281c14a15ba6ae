import { Show, createSignal, type JSX } from 'solid-js';
import { ByHand, copy } from './Copy.tsx';
import { sayer, type Words } from './words.ts';

/** A button for a text that may still change; a copy that no longer is what stands here is told of. */
export function CopyButton(props: {
  readonly page: { readonly words: Words };
  readonly label: string;
  readonly text: () => string;
  /** Said once it is copied. */
  readonly done: string;
}): JSX.Element {
  const t = sayer(props);
  const [tried, setTried] = createSignal<{ readonly text: string; readonly worked: boolean }>();
  const said = () => {
    const last = tried();
    if (!last?.worked) return '';
    return last.text === props.text() ? props.done : t('job:stale');
  };
  return (
    <>
      <button
        type="button"
        class="plain"
        onClick={() => {
          const text = props.text();
          setTried();
          void copy(text).then((worked) => setTried({ text, worked }));
        }}
      >
        {props.label}
      </button>
      <span role="status">{said()}</span>
      <Show when={tried()?.worked === false}>
        <ByHand label={t('job:byHand')} text={props.text()} />
      </Show>
    </>
  );
}
