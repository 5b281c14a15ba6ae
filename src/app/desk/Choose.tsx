import { For, onCleanup, onMount } from 'solid-js';
import type { CodebookGuide } from '../../note/codebook.ts';
import type { Words } from '../shared/words.ts';
import { guideName } from '../shared/content-words.ts';
import { Key } from './Key.tsx';
import { onDanger } from './danger.ts';
import { actionOf, answerKeys, isField, letters } from './keys.ts';
import type { DeskState } from './state.ts';

/** The start of a call: what the caller says, on number keys. */
export function Choose(props: {
  readonly words: Words;
  /** Guide → its part, the main guide's first: the order shown. */
  readonly files: Readonly<Record<string, string>>;
  readonly guides: readonly CodebookGuide[];
  readonly onChoose: (guide: string, then?: (desk: DeskState) => void) => void;
}) {
  const inOrder = () =>
    Object.keys(props.files).filter((id) => props.guides.some((guide) => guide.id === id));
  const withMain = (then: (desk: DeskState) => void): void =>
    props.onChoose(inOrder()[0] ?? '', then);
  const code = () => withMain((desk) => desk.journey.show('code'));
  // eslint-disable-next-line solid/reactivity -- called by an event
  onDanger((answer) => withMain((desk) => desk.journey.choose(answer)));
  const pressed = (event: KeyboardEvent): void => {
    const action = actionOf(event);
    const target = event.target instanceof HTMLElement ? event.target : document.body;
    if (!action || event.defaultPrevented || isField(target.tagName, '')) return;
    const guide = action.do === 'answer' ? inOrder()[answerKeys.indexOf(action.key)] : undefined;
    if (guide !== undefined) props.onChoose(guide);
    else if (action.do === 'codeIn') code();
    else if (action.do === 'danger') withMain((desk) => desk.journey.show('danger'));
    else return;
    event.preventDefault();
  };
  document.addEventListener('keydown', pressed);
  onCleanup(() => document.removeEventListener('keydown', pressed));
  onMount(() => document.getElementById('desk-say')?.focus());
  return (
    <section class="ask choose">
      <p class="kicker">
        <strong>{props.words.t('desk:choose.kicker')}</strong>
      </p>
      <h2 class="aloud" id="desk-say" tabindex="-1">
        {props.words.t('desk:choose.title')}
      </h2>
      <ul class="choices" aria-label={props.words.t('desk:choose.label')}>
        <For each={inOrder()}>
          {(id, index) => (
            <li>
              <button type="button" onClick={() => props.onChoose(id)}>
                <Key of={answerKeys[index()] ?? ''} /> <span>{guideName(props.words, id)}</span>
              </button>
            </li>
          )}
        </For>
      </ul>
      <p class="quiet">{props.words.t('desk:choose.hint')}</p>
      <div class="ways">
        <button type="button" class="plain" onClick={code}>
          <Key of={letters.codeIn} /> {props.words.t('desk:codeIn.open')}
        </button>
      </div>
    </section>
  );
}
