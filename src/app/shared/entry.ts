/** A record with one text set, or taken out where it is ''. The one changed comes last. */
export function withEntry(
  record: Readonly<Record<string, string>>,
  key: string,
  text: string,
): Record<string, string> {
  const others = Object.entries(record).filter(([other]) => other !== key);
  return Object.fromEntries(text === '' ? others : [...others, [key, text]]);
}
