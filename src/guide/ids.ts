/**
 * Names over several guides. In a joined guide the nodes of another guide, and the keys of
 * their sentences, are called `other/name`; the guide's own have no slash.
 */
import type { Guide, GuideId, GuideNode } from './types.ts';

/** The name of another guide's node, or of its sentences. */
export function qualifyOther(guide: string, name: string): string {
  return `${guide}/${name}`;
}

/** A joined guide's name of a node, or of its sentences, told with its guide: its own as well. */
export function qualify(guide: string, id: string): string {
  return id.includes('/') ? id : qualifyOther(guide, id);
}

/** The guide and the name in it; no guide for the joined guide's own. */
export function parseId(id: string): { readonly guide: string | undefined; readonly name: string } {
  const slash = id.indexOf('/');
  return slash < 0
    ? { guide: undefined, name: id }
    : { guide: id.slice(0, slash), name: id.slice(slash + 1) };
}

export function isOwn({ id }: { readonly id: string }): boolean {
  return !id.includes('/');
}

/** The nodes of the guide's own file: those that are pages under its name. */
export function ownNodes(guide: Guide): GuideNode[] {
  return [...guide.nodes.values()].filter(isOwn);
}

/** The other guides whose nodes a joined guide has, in the order they are reached. */
export function guidesOf({ nodes }: Pick<Guide, 'nodes'>): GuideId[] {
  const others = [...nodes.keys()].flatMap((id) => parseId(id).guide ?? []);
  return [...new Set(others)] as GuideId[];
}
