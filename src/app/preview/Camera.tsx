import { onCleanup, onMount, type JSX } from 'solid-js';
import { makeDecode, type Decode } from './decode.ts';
import type { Key } from '../shared/keys.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';

interface Props {
  readonly page: Page;
  onText(text: string): void;
  /** Why there is no picture. */
  onTrouble(key: Key): void;
}

/** Milliseconds between looks: quick enough to the eye, and a phone stays cool. */
const BETWEEN_LOOKS = 150;

function reason(error: unknown): Key {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'preview:scan.denied';
  return name === 'NotFoundError' || name === 'OverconstrainedError'
    ? 'preview:scan.noCamera'
    : 'preview:scan.failed';
}

/** The camera's picture, looked at until a QR code is seen. Gone from the page, it is off. */
export function Camera(props: Props): JSX.Element {
  const t = sayer(props);
  let video: HTMLVideoElement | undefined;
  let stream: MediaStream | undefined;
  const life = new AbortController();
  const over = (): boolean => life.signal.aborted;
  const stop = (): void => {
    life.abort();
    for (const track of stream?.getTracks() ?? []) track.stop();
  };
  const tell = (trouble: Key): void => {
    if (!over()) props.onTrouble(trouble);
  };

  const look = async (screen: HTMLVideoElement, decode: Decode): Promise<void> => {
    while (!over()) {
      const text = await decode(screen).catch(() => undefined);
      if (text !== undefined && !over()) props.onText(text);
      await new Promise((later) => setTimeout(later, BETWEEN_LOOKS));
    }
  };
  const open = async (screen: HTMLVideoElement): Promise<void> => {
    // Absent where the page is not served safely.
    const media = (navigator as { mediaDevices?: MediaDevices }).mediaDevices;
    if (!media) {
      tell('preview:scan.noCamera');
      return;
    }
    try {
      stream = await media.getUserMedia({ video: { facingMode: 'environment' }, audio: false });
    } catch (error) {
      tell(reason(error));
      return;
    }
    if (over()) {
      stop();
      return;
    }
    screen.srcObject = stream;
    await screen.play().catch(() => undefined);
    const decode = await makeDecode().catch(() => undefined);
    if (decode) await look(screen, decode);
    else tell('preview:scan.library');
  };
  onMount(() => {
    if (video) void open(video);
  });
  onCleanup(stop);

  return (
    <div class="camera">
      <video
        ref={(element) => (video = element)}
        aria-label={t('preview:scan.view')}
        playsinline
        muted
      />
      <p class="quiet">{t('preview:scan.aim')}</p>
    </div>
  );
}
