import { Show, type JSX } from 'solid-js';
import type { Words } from '../shared/words.ts';
import type { Field, Unit } from './entries.ts';
import { problemWords } from './figures.ts';
import type { EntryProblem } from './judge.ts';

interface Props {
  readonly words: Words;
  readonly field: Field;
  readonly unit: Unit;
  readonly value: string;
  readonly problem: EntryProblem | undefined;
  onInput(text: string): void;
}

/** One field with its hint and, tied to it, what is wrong with what was typed. */
export function Entry(props: Props): JSX.Element {
  const t: Words['t'] = (key, facts) => props.words.t(key, facts);
  const hint = () => `${props.field}-hint`;
  const trouble = () => `${props.field}-trouble`;
  return (
    <div class="entry">
      <label for={props.field}>
        {t(`bench:${props.field}.label`, { unit: t(`bench:unit.${props.unit}`) })}
      </label>
      <p class="quiet" id={hint()}>
        {t(`bench:${props.field}.hint`)}
      </p>
      <input
        id={props.field}
        type="text"
        inputmode={props.field === 'at' ? 'text' : 'decimal'}
        autocomplete="off"
        spellcheck={false}
        aria-describedby={props.problem ? `${trouble()} ${hint()}` : hint()}
        aria-invalid={props.problem ? 'true' : undefined}
        value={props.value}
        onInput={(event) => props.onInput(event.currentTarget.value)}
      />
      <Show when={props.field === 'ohms'}>
        <button type="button" class="plain" onClick={() => props.onInput('OL')}>
          {t('bench:ohms.overload')}
        </button>
      </Show>
      <p class="trouble" id={trouble()} aria-live="polite">
        {props.problem && problemWords(props.words, props.field, props.problem)}
      </p>
    </div>
  );
}
