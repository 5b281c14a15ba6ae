/** Texts onto the clipboard; where the browser does not let us, they stand selected to be copied by hand. */
import type { JSX } from 'solid-js';

/** @param field what holds the text: selected where copying is blocked. Whether it was copied. */
export async function copy(text: string, field?: HTMLTextAreaElement | null): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    field?.focus();
    field?.select();
    return false;
  }
}

/** A field for a text that could not be copied, selected once it stands in the page. */
export function ByHand(props: { readonly label: string; readonly text: string }): JSX.Element {
  return (
    <label class="by-hand">
      {props.label}
      <textarea
        readonly
        rows="3"
        value={props.text}
        ref={(field) =>
          queueMicrotask(() => {
            field.focus();
            field.select();
          })
        }
      />
    </label>
  );
}
