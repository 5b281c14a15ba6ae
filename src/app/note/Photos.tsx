import { For, createSignal, type JSX } from 'solid-js';
import { FileButton } from '../shared/FileButton.tsx';
import type { Words } from '../shared/words.ts';

/** Readable on a small plate, and small enough for a text message. Pixels along the longer side. */
const LONGEST = 1600;
const QUALITY = 0.85;

const pictures = ['display', 'plate'] as const;
type Picture = (typeof pictures)[number];

/**
 * A photo as it is shared: smaller, and without what the camera wrote into its file, the place
 * among it. One that the browser cannot open goes as it is.
 */
async function shrunk(file: File, name: Picture): Promise<File> {
  const image = await createImageBitmap(file).catch(() => undefined);
  if (!image) return file;
  const scale = Math.min(1, LONGEST / Math.max(image.width, image.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(image.width * scale);
  canvas.height = Math.round(image.height * scale);
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
  return blob ? new File([blob], `${name}.jpg`, { type: blob.type }) : file;
}

/** Photos for what the phone shares. They are in this page's memory only, and go nowhere else. */
export function Photos(props: {
  words: Words;
  share: (files: readonly File[]) => Promise<void>;
}): JSX.Element {
  const [files, setFiles] = createSignal<Readonly<Partial<Record<Picture, File>>>>({});
  const chosen = () => pictures.flatMap((one) => files()[one] ?? []);
  const add = async (name: Picture, file: File): Promise<void> => {
    const photo = await shrunk(file, name);
    setFiles((before) => ({ ...before, [name]: photo }));
  };
  return (
    <div class="photos no-print">
      <p>{props.words.t('note:photos.text')}</p>
      <For each={pictures}>
        {(one) => (
          <FileButton
            label={props.words.t(`note:photos.${files()[one] ? 'has' : 'add'}.${one}`)}
            accept="image/*"
            onFile={(file) => add(one, file)}
          />
        )}
      </For>
      <button
        type="button"
        disabled={chosen().length === 0}
        onClick={() => void props.share(chosen())}
      >
        {props.words.t('note:photos.share')}
      </button>
    </div>
  );
}
