import type { JSX } from 'solid-js';

/** A button that takes a file from the reader's device. */
export function FileButton(props: {
  readonly label: string;
  /** Kinds of file, as the `accept` of HTML's file field. */
  readonly accept: string;
  readonly onFile: (file: File) => Promise<void>;
}): JSX.Element {
  return (
    <label class="button plain file">
      <input
        type="file"
        accept={props.accept}
        onChange={(event) => {
          const input = event.currentTarget;
          const file = input.files?.[0];
          // Emptied, so that the same file can be chosen again.
          if (file) void props.onFile(file).finally(() => (input.value = ''));
        }}
      />
      {props.label}
    </label>
  );
}
