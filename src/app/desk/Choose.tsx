import { For, onMount, type Accessor } from 'solid-js';
import { guideName } from '../shared/content-words.ts';
import { CallerCard } from './CallerCard.tsx';
import { Key, KeyButton } from './Key.tsx';
import { Keys } from './Keys.tsx';
import { Others } from './Others.tsx';
import type { CallRecord } from './calls.ts';
import type { CallerState } from './caller.ts';
import { onDanger } from './danger.ts';
import { answerKeys, letters } from './keys.ts';
import type { Shell } from './page.ts';
import { createSeen } from './seen.ts';
import { sayer } from '../shared/words.ts';
import { focus, listen } from './shortcuts.ts';
import type { DeskState } from './state.ts';

/** The other calls of the tab, and the way back to one. */
export interface OtherCalls {
  readonly list: Accessor<readonly CallRecord[]>;
  readonly take: (id: number) => void;
}

/** The start of a call: what the caller says, on number keys; who calls can be written from the first second. */
export function Choose(props: {
  readonly page: Shell;
  readonly caller: CallerState;
  readonly calls: OtherCalls;
  readonly onChoose: (guide: string, then?: (desk: DeskState) => void) => void;
  readonly onHold: () => void;
  readonly onUndo: () => void;
}) {
  const t = sayer(props);
  // eslint-disable-next-line solid/reactivity -- what the page carries does not change
  const guides = Object.keys(props.page.files);
  const withMain = (then: (desk: DeskState) => void): void => props.onChoose(guides[0] ?? '', then);
  const code = () => withMain((desk) => desk.journey.show('code'));
  const danger = () => withMain((desk) => desk.journey.show('danger'));
  const seen = createSeen(() => true);
  // eslint-disable-next-line solid/reactivity -- called by an event
  onDanger((answer) => withMain((desk) => desk.journey.choose(answer)));
  listen(
    {
      answer(key) {
        const guide = guides[answerKeys.indexOf(key)];
        if (guide !== undefined && seen()) props.onChoose(guide);
      },
      codeIn: code,
      danger,
      caller: focus('desk-name'),
      calls: focus('desk-calls'),
      hold: () => props.onHold(),
      undo: () => props.onUndo(),
    },
    focus('desk-say'),
  );
  onMount(focus('desk-say'));
  return (
    <div class="desk" data-seen={seen() ? '' : undefined}>
      <section class="ask choose">
        <p class="kicker">
          <strong>{t('desk:choose.kicker')}</strong>
        </p>
        <h2 class="aloud" id="desk-say" tabindex="-1">
          {t('desk:choose.title')}
        </h2>
        <ul class="choices" aria-label={t('desk:choose.label')}>
          <For each={guides}>
            {(id, index) => (
              <li>
                <button type="button" onClick={() => seen() && props.onChoose(id)}>
                  <Key of={answerKeys[index()] ?? ''} />{' '}
                  <span>{guideName(props.page.words, id)}</span>
                </button>
              </li>
            )}
          </For>
        </ul>
        <p class="quiet">{t('desk:choose.hint')}</p>
        <div class="ways">
          <KeyButton
            class="plain danger"
            of={letters.danger}
            says={t('desk:bar.danger')}
            onClick={danger}
          />
          <KeyButton of={letters.codeIn} says={t('desk:codeIn.open')} onClick={code} />
          <KeyButton of={letters.hold} says={t('desk:bar.hold')} onClick={() => props.onHold()} />
        </div>
      </section>
      <div class="sheet">
        <CallerCard page={props.page} caller={props.caller} />
        <Others page={props.page} calls={props.calls} />
      </div>
      <Keys page={props.page} />
    </div>
  );
}
