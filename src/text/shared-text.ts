import type { Guide } from '../guide/types.ts';

/**
 * A guide's sentences with those of the shared danger pages that it has; its own
 * sentences of the same name take their place.
 */
export function withSharedText<T>(
  guide: Guide,
  shared: Readonly<Record<string, T>>,
  own: Readonly<Record<string, T>>,
): Record<string, T> {
  const has = new Set<string>([...guide.nodes.values()].map(({ text }) => text));
  const taken = Object.entries(shared).filter(([name]) => has.has(name));
  return { ...Object.fromEntries(taken), ...own };
}
