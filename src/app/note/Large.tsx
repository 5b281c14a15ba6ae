import type { Words } from '../shared/words.ts';
import { Groups } from './Groups.tsx';

/** The code as big as the screen, to hold up or to read from afar. Escape closes it. */
export function Large(props: {
  words: Words;
  code: string;
  spelled: readonly (readonly string[])[];
}) {
  let dialog: HTMLDialogElement | undefined;
  return (
    <>
      <button type="button" onClick={() => dialog?.showModal()}>
        {props.words.t('note:pass.large')}
      </button>
      <dialog
        class="large"
        ref={(element) => (dialog = element)}
        aria-label={props.words.t('note:code.label')}
      >
        <Groups
          code={props.code}
          spelled={props.spelled}
          label={props.words.t('note:code.label')}
        />
        <button type="button" onClick={() => dialog?.close()}>
          {props.words.t('note:pass.close')}
        </button>
      </dialog>
    </>
  );
}
