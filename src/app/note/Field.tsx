import type { JSX } from 'solid-js';
import type { Words } from '../shared/words.ts';
import type { NoteState } from './state.ts';

/** So that the whole address stays under the length `fragment.ts` reads, in any script. */
const MOST = { error: 60, model: 40, remark: 240 } as const;

/** A text of the note with its hint; what else it has to say comes as its child. */
export function Field(props: {
  words: Words;
  state: NoteState;
  name: keyof typeof MOST;
  children?: JSX.Element;
}) {
  // An empty field is not printed: the style asks for its placeholder. No text has lines.
  return (
    <p class="field">
      <label for={props.name}>{props.words.t(`note:more.${props.name}`)}</label>
      <span class="quiet no-print" id={`${props.name}-hint`}>
        {props.words.t(`note:more.${props.name}Hint`, { most: MOST.remark })}
      </span>
      <textarea
        id={props.name}
        rows={props.name === 'remark' ? 4 : 1}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        placeholder=" "
        maxlength={MOST[props.name]}
        aria-describedby={`${props.name}-hint`}
        value={props.state.fragment()[props.name] ?? ''}
        onInput={({ currentTarget: { value } }) =>
          props.state.change({ [props.name]: value.replaceAll('\n', ' ') })
        }
      />
      {props.children}
    </p>
  );
}
