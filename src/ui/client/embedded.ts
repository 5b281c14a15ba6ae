/** A block of data the page carries as `<script type="application/json" id="…">`. */
export function embedded(id: string): unknown {
  return JSON.parse(document.getElementById(id)?.textContent ?? 'null');
}
