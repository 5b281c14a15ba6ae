/** Which sentences a language must have of its own before a copy may speak it. */
import { all } from './content.ts';
import type { Content, Checked } from './content.ts';
import { ok } from '../result.ts';
import type { Guide, GuideNode } from '../guide/types.ts';
import { parseId } from '../guide/ids.ts';
import { BLOCKS } from './texts.ts';

/** Besides guides' pages: what warns, counts down, says whom to call, or says that English is left. */
const EVERYWHERE = [
  ...['site:danger', 'site:signals', 'site:timer', 'site:end', 'site:footer.behind'],
  ...['note:urgency', 'note:next', 'care:topics', 'offline:recalled'],
  ...[
    'preview:flags',
    'diagnosis:cautions',
    'diagnosis:everyCheck',
    'bench:care',
    'desk:say.danger',
  ],
];

/** The danger question, all ends, and pages that warn, wait, heat, or tell staff of a hazard. */
function isSafety(guide: Guide, node: GuideNode): boolean {
  const { answers, caution, flag, heat, id, kind, timer } = node;
  return (
    id === guide.start ||
    kind === 'stop' ||
    kind === 'finish' ||
    heat ||
    caution !== undefined ||
    timer !== undefined ||
    flag !== undefined ||
    answers.some((answer) => answer.flag !== undefined)
  );
}

const within = (path: string, whole: string): boolean =>
  path === whole || path.startsWith(`${whole}.`);

/** Tests whether what a path (`file:key.key`) names is, holds, or belongs to a safety sentence. */
export function safetySentences(content: Content): Checked<(path: string) => boolean> {
  const parts = all<[readonly Guide[]]>(content.wholeGuides());
  if (!parts.ok) return parts;
  const [guides] = parts.value;
  const pages = guides.flatMap((guide) =>
    [...guide.nodes.values()]
      .filter((node) => isSafety(guide, node))
      .flatMap(({ sentences }) => {
        const { guide: of = guide.id, name } = parseId(sentences);
        // Where a page of a block stands is told by its file alone.
        return [`${of}:${name}`, `${BLOCKS}:${name}`];
      }),
  );
  const known = [...new Set([...EVERYWHERE, ...pages])];
  return ok((path) => known.some((one) => within(path, one) || within(one, path)));
}
