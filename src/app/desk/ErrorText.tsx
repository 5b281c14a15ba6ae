import { Key } from './Key.tsx';
import { letters } from './keys.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';
import { longestError } from '../../note/error-text.ts';

/** What the display shows, exactly; it goes into the code. */
export function ErrorText(props: DeskProps) {
  const t = sayer(props);
  return (
    <p class="field">
      <label for="desk-error">
        {t('desk:details.error')} <Key of={letters.error} />
      </label>
      <span class="quiet" id="desk-error-hint">
        {t('desk:details.errorHint')}
      </span>
      <input
        id="desk-error"
        class="typed"
        type="text"
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        maxlength={longestError}
        aria-describedby="desk-error-hint"
        value={props.desk.address.fragment().error ?? ''}
        onInput={({ currentTarget }) => props.desk.address.note({ error: currentTarget.value })}
      />
    </p>
  );
}
