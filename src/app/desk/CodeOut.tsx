import { For, Show, createEffect, createMemo, createSignal, on } from 'solid-js';
import { digitGroup } from '../../note/spelling.ts';
import { readBack, type ReadBack } from '../../note/read-back.ts';
import { groupSize } from '../../note/symbols.ts';
import { spell } from '../../note/spelling.ts';
import type { NoteCode } from '../../note/types.ts';
import { Groups } from '../note/Groups.tsx';
import { knownDetails } from '../note/code.ts';
import { problemWords } from '../preview/sentences.ts';
import { Compared } from '../shared/Compared.tsx';
import { Key } from './Key.tsx';
import { letters } from './keys.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps, Made } from './state.ts';

/** The code to give out with its spelling words, and what the caller reads back beside it. */
export function CodeOut(props: DeskProps & Pick<Made, 'outcome'>) {
  const t = sayer(props);
  return (
    <section class="panel code-out">
      <h2>
        {t('desk:codeOut.title')} <Key of={letters.codeOut} />
      </h2>
      <Show when={props.outcome.code()} fallback={<p class="quiet">{t('desk:codeOut.none')}</p>}>
        {(code) => <Give {...props} code={code()} />}
      </Show>
    </section>
  );
}

function Give(props: DeskProps & { readonly code: NoteCode }) {
  const t = sayer(props);
  const [typed, setTyped] = createSignal('');
  const [whole, setWhole] = createSignal(false);
  const [changed, setChanged] = createSignal(false);
  const spelled = createMemo(() => spell(props.code, props.page.words.list('note:digits')));
  const back = createMemo(() =>
    typed().trim() === '' ? undefined : readBack(props.code, typed(), whole()),
  );
  createEffect(
    on(
      () => props.code,
      () => {
        // A code read back counts no more once it has changed.
        setChanged(typed() !== '');
        setTyped('');
        setWhole(false);
      },
      { defer: true },
    ),
  );
  createEffect(() => {
    if (back()?.kind === 'same') props.desk.confirmReadBack(props.code);
  });
  const differing = () => {
    const now = back();
    return now?.kind === 'different' ? now : undefined;
  };
  const said = () => {
    const now = back();
    if (!now) return changed() ? t('desk:codeOut.changed') : '';
    switch (now.kind) {
      case 'same':
        return t('desk:codeOut.same', { count: now.of });
      case 'so-far':
        return t('desk:codeOut.soFar', { count: now.given, of: now.of });
      case 'different':
        return t('desk:codeOut.different', { count: now.count });
      case 'unclear': {
        if (!whole()) return '';
        const { what, next } = problemWords(props.page.words, now.problem);
        return `${what} ${next}`;
      }
    }
  };
  const asked = () => knownDetails(props.page.codebook, props.desk.address.fragment().details);
  return (
    <>
      <Show when={Object.keys(asked()).length < props.page.codebook.details.length && !back()}>
        <p class="strong">{t('desk:codeOut.first')}</p>
      </Show>
      <p class="quiet">{t('desk:codeOut.say')}</p>
      <Groups code={props.code} spelled={spelled()} label={t('desk:codeOut.title')} />
      <p class="field">
        <label for="desk-back">{t('desk:codeOut.back')}</label>
        <span class="quiet" id="desk-back-hint">
          {t('desk:codeOut.hint')}
        </span>
        <input
          id="desk-back"
          class="typed"
          type="text"
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          aria-describedby="desk-back-hint desk-back-said"
          aria-invalid={differing() ? 'true' : undefined}
          value={typed()}
          onInput={({ currentTarget }) => {
            setTyped(currentTarget.value);
            setWhole(false);
          }}
          onChange={() => setWhole(true)}
          onKeyDown={({ key, isComposing }) => {
            if (key === 'Enter' && !isComposing) setWhole(true);
          }}
        />
      </p>
      <p class="back-said" id="desk-back-said" role="status" data-kind={back()?.kind}>
        {said()}
      </p>
      <Show when={differing()}>{(now) => <Differences {...props} now={now()} />}</Show>
    </>
  );
}

/** Code above, what was read back below, sign by sign; differences marked, and told in words. */
function Differences(
  props: DeskProps & { readonly now: Extract<ReadBack, { kind: 'different' }> },
) {
  const t = sayer(props);
  const size = () => (props.now.digits ? digitGroup : groupSize);
  const different = () => props.now.places.filter(({ how }) => how !== 'same');
  return (
    <>
      <p class="quiet">{t('desk:codeOut.compared')}</p>
      <Compared places={props.now.places} above="is" group={size()} />
      <ul class="differences">
        <For each={different()}>
          {({ at, is, was, how }) => (
            <li>
              {t(`desk:codeOut.${how}`, {
                group: Math.floor(at / size()) + 1,
                place: (at % size()) + 1,
                is,
                was,
              })}
            </li>
          )}
        </For>
      </ul>
    </>
  );
}
