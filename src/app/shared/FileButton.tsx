import type { JSX } from 'solid-js';

/** A button that takes a file from the reader's device, or several. */
export function FileButton(props: {
  readonly label: string;
  /** Kinds of file, as the `accept` of HTML's file field. */
  readonly accept: string;
  readonly multiple?: true;
  readonly onFile: (file: File, ...others: readonly File[]) => Promise<void>;
}): JSX.Element {
  return (
    <label class="button plain file">
      <input
        type="file"
        accept={props.accept}
        multiple={props.multiple}
        onChange={(event) => {
          const input = event.currentTarget;
          const [file, ...others] = input.files ?? [];
          // Emptied, so that the same file can be chosen again.
          if (file) void props.onFile(file, ...others).finally(() => (input.value = ''));
        }}
      />
      {props.label}
    </label>
  );
}
