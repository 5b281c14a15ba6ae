/** A block of data the page carries as `<script type="application/json" id="…">`. */
export function embedded(id: string): unknown {
  return JSON.parse(document.getElementById(id)?.textContent ?? 'null');
}

/** Data as the text of such a block, at build time: `<` would let a text in it end the block. */
export function embed(data: unknown): string {
  return JSON.stringify(data).replaceAll('<', '\\u003c');
}
