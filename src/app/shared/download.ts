/** Hands a text to the reader as a file of this name. */
export function download(name: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser has taken the text over once the click is through.
  setTimeout(() => URL.revokeObjectURL(url), 0);
}
