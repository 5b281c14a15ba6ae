const files = import.meta.glob<string>('./drawings/**/*.svg', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/**
 * The markup of one of our drawings, those of answers as `answers/<name>`; decorative, so hidden
 * from assistive technology.
 */
export function drawing(name: string): string {
  const svg = files[`./drawings/${name}.svg`];
  if (svg === undefined) throw new Error(`No drawing "${name}" in src/site/drawings.`);
  return svg.trim().replace(/xmlns="[^"]*"/, 'aria-hidden="true"');
}
