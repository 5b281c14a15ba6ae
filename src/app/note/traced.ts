import type { Trace } from '../../journey/trace.ts';
import type { CodebookGuide, CodebookNode } from '../../note/codebook.ts';

/** What the note page shows: a journey of its guide, and the guide. */
export type Traced = Trace<CodebookNode> & { readonly guide: CodebookGuide };
