import { canStashFreeText } from '../shared/free-text.ts';
import type { Words } from '../shared/words.ts';
import { Field } from './Field.tsx';
import type { NoteState } from './state.ts';

/** What may be added that the code does not hold. */
export function More(props: { words: Words; state: NoteState }) {
  const t: Words['t'] = (key) => props.words.t(key);
  return (
    <section class="card more">
      <h2>{t('note:more.longTitle')}</h2>
      <p class="quiet no-print">
        {t('note:more.longText')}{' '}
        {t(canStashFreeText() ? 'note:more.inTab' : 'note:more.inAddress')}
      </p>
      <Field {...props} name="model" />
      <Field {...props} name="remark" />
    </section>
  );
}
