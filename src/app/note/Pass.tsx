import { Show, createSignal, onCleanup, type JSX } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { ByHand, copy } from '../shared/Copy.tsx';
import type { Key } from '../shared/keys.ts';
import type { Words } from '../shared/words.ts';
import type { Photos as PhotosPart } from './Photos.tsx';

/** Web Share Level 2; some browsers share text alone. */
function canShareFiles(): boolean {
  const files = [new File([''], 'photo.jpg', { type: 'image/jpeg' })];
  return 'canShare' in navigator && navigator.canShare({ files });
}

/** The ways to hand the code on. What the browser cannot do has no button. */
export function Pass(props: {
  words: Words;
  code: string;
  link: string;
  /** What is shared, in plain words. */
  message: string;
  spelled: readonly (readonly string[])[];
  say: (sentence: string) => void;
  children: JSX.Element;
}) {
  const [manual, setManual] = createSignal<string>();
  const [aloud, setAloud] = createSignal(false);
  const canShare = 'share' in navigator;
  const [photos, setPhotos] = createSignal<typeof PhotosPart>();
  const canSpeak = 'speechSynthesis' in window;

  async function copied(text: string, done: Key): Promise<void> {
    setManual();
    const worked = await copy(text);
    setManual(worked ? undefined : text);
    props.say(props.words.t(worked ? done : 'note:pass.copyByHand'));
  }
  async function share(files: readonly File[] = []): Promise<void> {
    try {
      // The link is in the text: with files, programs drop an address beside it.
      await navigator.share({
        title: props.words.t('note:title'),
        text: props.message,
        ...(files.length > 0 ? { files: [...files] } : {}),
      });
    } catch (error) {
      // Closing the share sheet is no failure.
      if (!(error instanceof DOMException && error.name === 'AbortError'))
        props.say(props.words.t('note:pass.shareFailed'));
    }
  }
  async function addPhotos(): Promise<void> {
    const part = await import('./Photos.tsx').catch(() => undefined);
    if (part) setPhotos(() => part.Photos);
    else props.say(props.words.t('note:pass.shareFailed'));
  }
  function speak(): void {
    speechSynthesis.cancel();
    if (aloud()) return void setAloud(false);
    // A full stop makes the voice rest between groups, so that a listener can write.
    const speech = new SpeechSynthesisUtterance(
      props.spelled.map((group) => group.join(', ')).join('. '),
    );
    speech.lang = props.words.language;
    speech.rate = 0.8;
    speech.onend = speech.onerror = () => setAloud(false);
    setAloud(true);
    speechSynthesis.speak(speech);
  }
  const copyCode = (kind: string) => (
    <button type="button" class={kind} onClick={() => void copied(props.code, 'note:pass.copied')}>
      {props.words.t('note:pass.copy')}
    </button>
  );
  onCleanup(() => {
    if (canSpeak) speechSynthesis.cancel();
  });
  return (
    <>
      <Show when={manual()}>
        {(text) => <ByHand label={props.words.t('note:pass.byHand')} text={text()} />}
      </Show>
      <div class="pass no-print">
        <Show when={canShare}>
          <button type="button" onClick={() => void share()}>
            {props.words.t('note:pass.share')}
          </button>
        </Show>
        <Show when={!canShare}>{copyCode('')}</Show>
        {props.children}
        <Show when={canShareFiles() && !photos()}>
          <button type="button" class="plain" onClick={() => void addPhotos()}>
            {props.words.t('note:photos.open')}
          </button>
        </Show>
        <Show when={canShare}>{copyCode('plain')}</Show>
        <button
          type="button"
          class="plain"
          onClick={() => void copied(props.link, 'note:pass.copiedLink')}
        >
          {props.words.t('note:pass.copyLink')}
        </button>
        <Show when={canSpeak}>
          <button type="button" class="plain" onClick={speak}>
            {props.words.t(aloud() ? 'note:pass.quiet' : 'note:pass.aloud')}
          </button>
        </Show>
        <button type="button" class="plain" onClick={() => print()}>
          {props.words.t('note:pass.print')}
        </button>
      </div>
      <Show when={photos()}>
        {(part) => (
          <Dynamic component={part()} words={props.words} share={(files) => share(files)} />
        )}
      </Show>
    </>
  );
}
