/** The codebooks of a copy, to read and write codes with. */
import type { Detail } from '../guide/details.ts';
import type { Guide } from '../guide/types.ts';
import { freeze } from '../note/freeze.ts';
import { makeCodebooks } from '../note/codebook.ts';
import type { Codebooks } from '../note/codebook.ts';
import type { Release } from '../note/release.ts';
import { ok } from '../result.ts';
import { all } from './content.ts';
import type { Content, Checked } from './content.ts';

export interface CurrentCodebooks {
  readonly codebooks: Codebooks;
  readonly newest: number;
  /** Nothing is frozen yet: the one codebook is the working guides' and may still change. */
  readonly draft: boolean;
}

/** The codebooks of all releases; of a copy that has none yet, the codebook its first one would be. */
export function currentCodebooks(content: Content, today: Date): Checked<CurrentCodebooks> {
  const parts = all<[readonly Release[], readonly Guide[], readonly Detail[], readonly string[]]>(
    content.releases(),
    content.guides(),
    content.details(),
    content.flags(),
  );
  if (!parts.ok) return parts;
  const [releases, guides, details, flags] = parts.value;
  const newest = releases.at(-1)?.release;
  if (newest !== undefined)
    return ok({ codebooks: makeCodebooks(releases, flags), newest, draft: false });
  const draft = freeze(guides, details, 1, today.toISOString().slice(0, 10));
  return ok({ codebooks: makeCodebooks([draft], flags), newest: 1, draft: true });
}
